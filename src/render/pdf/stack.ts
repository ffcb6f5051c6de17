import type { Mark, Piece } from "./piece.js";

/** The marks further down their piece. */
export const lower = (marks: Mark[], down: number): Mark[] =>
  marks.map((mark) => {
    if (mark.kind === "empty") return mark;
    if (mark.kind === "path") return { ...mark, y: mark.y + down, box: { ...mark.box, y: mark.box.y + down } };
    return { ...mark, y: mark.y + down };
  });

/** Lines on top of each other as one piece, with some room above. */
export function stacked(lines: Piece[], above = 0): Piece[] {
  const [first] = lines;
  if (!first) return [];
  let y = above;
  const marks = lines.flatMap((line) => {
    const placed = lower(line.marks, y);
    y += line.height;
    return placed;
  });
  return [{ ...first, height: y, keep: true, marks }];
}
