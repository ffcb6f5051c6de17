import type { Piece, PlacedPiece } from "./piece.js";
import type { Frame } from "./place.js";
import { closer } from "./place-urgent.js";

/** How much of the white may go so that a few lines need no page of their own. */
const whites = [0.9, 0.8, 0.7];
/** A last page with less than this share of its height filled holds a few lines. */
const few = 1 / 3;

/**
 * Places pieces by a rule of the caller's, so that the last page does not hold a few lines alone: with a little less white they
 * find room before it, or else the section before them goes along. Where neither helps, they stand there.
 */
export function placeToEnd(pieces: Piece[], frame: Frame, placeAll: (pieces: Piece[]) => PlacedPiece[]): PlacedPiece[] {
  const plain = placeAll(pieces);
  if (!endsInFew(plain, frame)) return plain;
  const last = lastPage(plain);
  for (const white of whites) {
    const placed = placeAll(closer(pieces, white));
    if (lastPage(placed) < last && !endsInFew(placed, frame)) return placed;
  }
  for (const company of withCompany(pieces)) {
    const placed = placeAll(company);
    if (lastPage(placed) === last && !endsInFew(placed, frame)) return placed;
  }
  return plain;
}

const lastPage = (placed: PlacedPiece[]): number => Math.max(0, ...placed.map(({ page }) => page));

function endsInFew(placed: PlacedPiece[], { other, bottom }: Frame): boolean {
  const last = lastPage(placed);
  const end = Math.max(...placed.filter(({ page }) => page === last).map(({ y, piece }) => y + piece.height));
  return last > 0 && end - other < (bottom - other) * few;
}

/** The end of the pieces kept together from the title of its last section on, of its last two, of its last three. */
function withCompany(pieces: Piece[]): Piece[][] {
  const starts = pieces.flatMap(({ what }, index) => (what === "rule" ? [index] : []));
  return starts
    .slice(-3)
    .reverse()
    .map((from) =>
      pieces.map((piece, index) => (index >= from && index < pieces.length - 1 ? { ...piece, keep: true } : piece)),
    );
}
