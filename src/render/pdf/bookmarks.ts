import type { Kit } from "./kit.js";
import type { PlacedPiece } from "./piece.js";
import type { Sheet } from "./sheet.js";

/** Sheets of more pages than this are given bookmarks. */
const few = 4;

type Destination = { pageNumber: number; fit: boolean; top: number; left: number; zoom: number; expanded: boolean };
type Outline = { addItem: (title: string, options: Destination) => Outline };

/** One bookmark a title, parts under their section, each leading to its line. */
export function addBookmarks(kit: Kit, placed: PlacedPiece[], sheet: Sheet): void {
  if (placed.every(({ page }) => page < few)) return;
  const levels: Outline[] = [kit.outline as unknown as Outline];
  for (const { page, y, piece, repeated } of placed) {
    if (!piece.bookmark || repeated) continue;
    const { title, depth } = piece.bookmark;
    const parent = levels[Math.min(depth, levels.length) - 1];
    if (!parent) continue;
    // pdfkit counts `left` from the right edge.
    const destination = { pageNumber: page, fit: false, top: y, left: sheet.width, zoom: 0, expanded: false };
    levels.splice(depth, Infinity, parent.addItem(title, destination));
  }
}
