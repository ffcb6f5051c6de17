import type { Piece, PlacedPiece } from "./piece.js";
import { type Frame, place } from "./place.js";

/** How much of the white between the pieces is kept, most first: below a third the eye no longer parts them. */
const whites = [1, 0.8, 0.6, 0.4];

/**
 * Places a handout whose first pieces are urgent: they stand on page one, with less white between them where it takes that.
 * Where no white would do for all, the first `most` of them stand there; where none would for these, nothing is drawn together.
 */
export function placeUrgent(urgent: Piece[], rest: Piece[], frame: Frame, most = urgent.length): PlacedPiece[] {
  const fits = (pieces: Piece[]) => (kept: number) =>
    place(closer(pieces, kept), frame).every(({ page }) => page === 0);
  const white = whites.find(fits(urgent)) ?? whites.find(fits(urgent.slice(0, most))) ?? 1;
  return place([...closer(urgent, white), ...rest], frame);
}

/** The same with a share of the white between them. */
export const closer = (pieces: Piece[], kept: number): Piece[] =>
  kept === 1 ? pieces : pieces.map((piece) => ({ ...piece, before: piece.before * kept }));
