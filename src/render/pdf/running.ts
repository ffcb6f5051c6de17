import type { Handout } from "#handout/handout.js";
import type { Mark, Piece, PlacedPiece } from "./piece.js";
import { inDigits, type Setting } from "./setting.js";
import type { Style } from "./sheet.js";
import { strongOf } from "./spans.js";

/** What stands at the foot of each page, and at its head after the first: of whom, from whom, when, which page. */
export function runningPieces(handout: Handout, pages: number, setting: Setting): PlacedPiece[] {
  return Array.from({ length: pages }, (_, page) => [
    ...(page === 0 ? [] : [headOf(handout, page, setting)]),
    footOf(handout, page, pages, setting),
  ]).flat();
}

function headOf({ running }: Handout, page: number, setting: Setting): PlacedPiece {
  const { full, styles, headBaseline } = setting.sheet;
  return band(page, headBaseline, [written(running.clinic, full.x, full.width, styles.running, setting)], setting);
}

function footOf({ running, pageWords }: Handout, page: number, pages: number, setting: Setting): PlacedPiece {
  const { full, text, styles, footBaseline, large } = setting.sheet;
  const { before, between, after } = pageWords;
  const number = `${before}${inDigits(page + 1, setting.digits)}${between}${inDigits(pages, setting.digits)}${after}`;
  const right = written(number, 0, full.width / 3, styles.running, setting);
  const pageX = full.x + full.width - right.width;
  const dateX = large ? full.x + full.width / 3 : text.x;
  const bold = strongOf(styles.running);
  const patient = written(running.patient, full.x, dateX - full.x - 12, bold, setting);
  const date = written(running.date, dateX, pageX - dateX - 12, styles.running, setting);
  return band(page, footBaseline, [patient, date, { ...right, x: pageX }], setting);
}

type Words = Extract<Mark, { kind: "text" }>;

function band(page: number, baseline: number, marks: Words[], setting: Setting): PlacedPiece {
  const { full, styles } = setting.sheet;
  const { leading } = styles.running;
  const drop = leading * 0.74;
  const piece: Piece = {
    what: "running",
    ...full,
    height: leading,
    before: 0,
    keep: false,
    marks: marks.map((mark) => ({ ...mark, y: drop })),
  };
  return { page, y: baseline - drop, piece, repeated: false };
}

/** Words of a running line. They stand in full on page one, so here what is too long may end in an ellipsis. */
function written(words: string, x: number, room: number, style: Style, setting: Setting): Words {
  let text = setting.set(words, style.weight, undefined);
  if (setting.width(text, style) > room) {
    while (text !== "" && setting.width(`${text}\u2026`, style) > room) text = [...text].slice(0, -1).join("");
    text = `${text.trimEnd()}\u2026`;
  }
  return { kind: "text", x, y: 0, width: setting.width(text, style), text, style, tabular: false, tag: null };
}
