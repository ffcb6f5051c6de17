import type { Mark, Piece } from "./piece.js";

/** A piece as it stands on a page that runs from right to left: everything is as far from the right edge as it was from the left. */
export const mirroredPiece = (piece: Piece, pageWidth: number): Piece => ({
  ...piece,
  x: pageWidth - piece.x - piece.width,
  marks: piece.marks.map((mark) => mirroredMark(mark, pageWidth)),
});

/** A drawing is mirrored with its page; its words are not, nor is what stands upright. */
function mirroredMark(mark: Mark, pageWidth: number): Mark {
  if (mark.kind === "empty") return mark;
  if (mark.kind !== "path") return { ...mark, x: pageWidth - mark.x - mark.width };
  const box = { ...mark.box, x: pageWidth - mark.box.x - mark.box.width };
  if (mark.upright !== undefined) return { ...mark, x: pageWidth - mark.x - 2 * mark.scale * mark.upright, box };
  return { ...mark, x: pageWidth - mark.x, box, flipped: true };
}
