import type { Handout } from "#handout/handout.js";
import type { Logo } from "#logo/logo.js";
import { placeOf } from "#problems/place.js";
import { type Outcome, type Problem, problem, stops } from "#problems/problem.js";
import { type Faces, type FontBytes, facesOf } from "./faces.js";
import { mirroredPiece } from "./mirror.js";
import { openingPieces } from "./opening.js";
import type { PlacedPiece } from "./piece.js";
import { placeApart } from "./place-apart.js";
import { placeToEnd } from "./place-to-end.js";
import { placeUrgent } from "./place-urgent.js";
import { runningPieces } from "./running.js";
import { goingOn, isUrgent, sectionPieces } from "./section.js";
import { settingOf } from "./setting.js";
import { type Paper, type Sheet, sheetsFor } from "./sheet.js";
import { tag } from "./tag.js";
import { allWords } from "./words.js";

/**
 * fonts: families, in the order they are to be used. onePage: all on one page, drawn in as far as can be read: where even that has
 * no room, a problem ("must") or several pages that are not drawn in ("may").
 */
export type PdfOptions = {
  paper: Paper;
  large: boolean;
  fonts: readonly FontBytes[];
  onePage?: "must" | "may" | undefined;
  logo?: Logo | null | undefined;
};

/** Measures a handout and gives each of its boxes a place, page by page in reading order; running lines come first on a page. */
export function layout(handout: Handout, options: PdfOptions): Outcome<PlacedPiece[]> {
  const { value, problems } = layoutWith(facesOf(options.fonts, allWords(handout)), handout, options);
  return { value: value?.pieces ?? null, problems };
}

/** The boxes of a handout, and the sheet they were placed on. */
export type Placed = { sheet: Sheet; pieces: PlacedPiece[] };

/** The same with fonts that are at hand. Problems: a character no font has, a box taller than a page, "page-full". */
export function layoutWith(
  faces: Faces,
  handout: Handout,
  { paper, large, onePage, logo = null }: Omit<PdfOptions, "fonts">,
): Outcome<Placed> {
  for (const sheet of sheetsFor(paper, large, onePage !== undefined)) {
    const { value, problems } = layoutOn(sheet, faces, handout, logo);
    if (!value || !onePage || value.every(({ page }) => page === 0))
      return { value: value && { sheet, pieces: value }, problems };
  }
  if (onePage === "may") return layoutWith(faces, handout, { paper, large, logo });
  // What the clinic adds to look like itself gives way before a sign or a number does.
  const { letterhead = [], ...clinic } = handout.clinic;
  if (logo || letterhead.length > 0) return layoutWith(faces, { ...handout, clinic }, { paper, large, onePage });
  return { value: null, problems: [problem("page-full", placeOf({}), {})] };
}

function layoutOn(sheet: Sheet, faces: Faces, handout: Handout, logo: Logo | null): Outcome<PlacedPiece[]> {
  const problems: Problem[] = [];
  const setting = settingOf(sheet, faces, { digits: handout.pageWords.digits, direction: handout.direction }, (found) =>
    problems.push(found),
  );
  const document = tag("Document", null);
  const piecesOf = (some: Handout["sections"]) => some.flatMap((section) => sectionPieces(section, document, setting));
  const { sections } = handout;
  const frame = { ...sheet.top, bottom: sheet.bottom };
  const inOrder = (): PlacedPiece[] => {
    const urgent = [...openingPieces(handout, logo, document, setting), ...piecesOf(sections.filter(isUrgent))];
    // What goes on under a heading of its own, after the first signs, may go on to page two.
    const [last] = sections.filter(isUrgent).slice(-1);
    const most = urgent.length - (last ? goingOn(last, setting) : 0);
    const rest = piecesOf(sections.filter((section) => !isUrgent(section)));
    return placeToEnd(rest, frame, (pieces) => placeUrgent(urgent, pieces, frame, most));
  };
  const placed = sheet.apart
    ? placeApart(
        sections.map((section) => piecesOf([section])),
        frame,
      )
    : inOrder();
  for (const { y, piece } of placed) {
    if (y + piece.height > sheet.bottom) problems.push(problem("taller-than-page", placeOf({}), { part: piece.what }));
  }
  const pages = Math.max(...placed.map(({ page }) => page)) + 1;
  const running = sheet.apart ? [] : runningPieces(handout, pages, setting);
  const all = [...running, ...placed].sort((one, other) => one.page - other.page);
  const turned =
    handout.direction === "ltr" ? all : all.map((one) => ({ ...one, piece: mirroredPiece(one.piece, sheet.width) }));
  return { value: stops(problems) ? null : turned, problems };
}
