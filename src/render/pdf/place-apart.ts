import type { Piece, PlacedPiece } from "./piece.js";
import { type Frame, place } from "./place.js";

/** Each part on pages of its own, one after the other. */
export function placeApart(parts: Piece[][], frame: Frame): PlacedPiece[] {
  let first = 0;
  return parts.flatMap((part) => {
    const placed = place(part, frame).map((one) => ({ ...one, page: one.page + first }));
    first = Math.max(...placed.map(({ page }) => page), first - 1) + 1;
    return placed;
  });
}
