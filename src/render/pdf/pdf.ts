import type { Handout } from "#handout/handout.js";
import type { Outcome } from "#problems/problem.js";
import { addBookmarks } from "./bookmarks.js";
import { draw } from "./draw.js";
import { facesOf } from "./faces.js";
import { bytesOf, openKit } from "./kit.js";
import { layoutWith, type PdfOptions } from "./layout.js";
import { colours } from "./sheet.js";
import { allWords } from "./words.js";

/**
 * A handout as a tagged PDF (1.7, PDF/UA-1). The same handout and options give the same bytes, whatever was made before.
 * Problems: a character no font has, a node that cannot be drawn, a box taller than a page, more than the one page asked for; each stops it.
 */
export function renderPdf(handout: Handout, options: PdfOptions): Outcome<Uint8Array> {
  const { paper, large, fonts } = options;
  const faces = facesOf(fonts, allWords(handout));
  const { value, problems } = layoutWith(faces, handout, options);
  if (!value) return { value: null, problems };
  const { sheet, pieces: placed } = value;
  const kit = openKit(handout, faces, paper, large);
  const look = handout.accent ? { ...colours, accent: handout.accent.light } : colours;
  draw(kit, placed, { sheet, faces, direction: handout.direction, colours: look });
  addBookmarks(kit, placed, sheet);
  return { value: bytesOf(kit), problems };
}
