import type { Handout } from "#handout/handout.js";
import { placeOf } from "#problems/place.js";
import { type Outcome, type Problem, problem, stops } from "#problems/problem.js";
import { type Faces, type FontBytes, facesOf } from "./faces.js";
import { mirroredPiece } from "./mirror.js";
import { openingPieces } from "./opening.js";
import type { PlacedPiece } from "./piece.js";
import { placeUrgent } from "./place-urgent.js";
import { runningPieces } from "./running.js";
import { isUrgent, sectionPieces } from "./section.js";
import { settingOf } from "./setting.js";
import { type Paper, type Sheet, sheetOf } from "./sheet.js";
import { tag } from "./tag.js";
import { allWords } from "./words.js";

/** fonts: families, in the order they are to be used. */
export type PdfOptions = { paper: Paper; large: boolean; fonts: readonly FontBytes[] };

/** Measures a handout and gives each of its boxes a place, page by page in reading order; running lines come first on a page. */
export const layout = (handout: Handout, { paper, large, fonts }: PdfOptions): Outcome<PlacedPiece[]> =>
  layoutOn(sheetOf(paper, large), facesOf(fonts, allWords(handout)), handout);

/** The same on a sheet and with fonts that are at hand. */
export function layoutOn(sheet: Sheet, faces: Faces, handout: Handout): Outcome<PlacedPiece[]> {
  const problems: Problem[] = [];
  const setting = settingOf(sheet, faces, { digits: handout.pageWords.digits, direction: handout.direction }, (found) =>
    problems.push(found),
  );
  const document = tag("Document", null);
  const piecesOf = (some: Handout["sections"]) => some.flatMap((section) => sectionPieces(section, document, setting));
  const { sections } = handout;
  const urgent = [...openingPieces(handout, document, setting), ...piecesOf(sections.filter(isUrgent))];
  const rest = piecesOf(sections.filter((section) => !isUrgent(section)));
  const placed = placeUrgent(urgent, rest, { ...sheet.top, bottom: sheet.bottom });
  for (const { y, piece } of placed) {
    if (y + piece.height > sheet.bottom) problems.push(problem("taller-than-page", placeOf({}), { part: piece.what }));
  }
  const pages = Math.max(...placed.map(({ page }) => page)) + 1;
  const all = [...runningPieces(handout, pages, setting), ...placed].sort((one, other) => one.page - other.page);
  const turned =
    handout.direction === "ltr" ? all : all.map((one) => ({ ...one, piece: mirroredPiece(one.piece, sheet.width) }));
  return { value: stops(problems) ? null : turned, problems };
}
