import type { Handout } from "#handout/handout.js";
import type { Outcome } from "#problems/problem.js";
import { addBookmarks } from "./bookmarks.js";
import { draw } from "./draw.js";
import { facesOf } from "./faces.js";
import { bytesOf, openKit } from "./kit.js";
import { layoutOn, type PdfOptions } from "./layout.js";
import { sheetOf } from "./sheet.js";
import { allWords } from "./words.js";

/**
 * A handout as a tagged PDF (1.7, PDF/UA-1). The same handout and options give the same bytes, whatever was made before.
 * Problems: a character no font has, a node that cannot be drawn, a box taller than a page; each stops it.
 */
export function renderPdf(handout: Handout, { paper, large, fonts }: PdfOptions): Outcome<Uint8Array> {
  const sheet = sheetOf(paper, large);
  const faces = facesOf(fonts, allWords(handout));
  const { value: placed, problems } = layoutOn(sheet, faces, handout);
  if (!placed) return { value: null, problems };
  const kit = openKit(handout, faces, paper, large);
  draw(kit, placed, { sheet, faces, direction: handout.direction });
  addBookmarks(kit, placed, sheet);
  return { value: bytesOf(kit), problems };
}
