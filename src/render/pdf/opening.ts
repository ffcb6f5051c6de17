import type { Handout, Inline } from "#handout/handout.js";
import { linePieces } from "./line-pieces.js";
import { linesOf } from "./lines.js";
import { titlePieces, wordPieces } from "./paragraph.js";
import { type Piece, spaced, together } from "./piece.js";
import type { Setting } from "./setting.js";
import { lookOf, spansOf, strongOf } from "./spans.js";
import { stacked } from "./stack.js";
import { type Tag, tag } from "./tag.js";

const words = (text: string): Inline[] => [{ kind: "text", text }];

/** The head of page one: who hands it over, what it is, whom it is about. */
export function openingPieces(handout: Handout, document: Tag, setting: Setting): Piece[] {
  const { full, styles, step } = setting.sheet;
  const title = titlePieces(words(handout.title), styles.title, full, tag("H1", document), setting, "title");
  const subtitle = wordPieces(handout.subtitle, lookOf(styles.subtitle), full, tag("P", document), setting);
  const notice = wordPieces(handout.translationNotice, lookOf(styles.note), full, tag("P", document), setting);
  return together([
    ...letterheadPieces(handout, document, setting),
    ...spaced(title, 1.5 * step).map((piece, index) => (index === 0 ? { ...piece, clear: true as const } : piece)),
    ...spaced(subtitle, step / 2),
    ...spaced(notice, step),
  ]);
}

/** Lines that are each kept to themselves stay so as one: an address is not read from its end. */
function inOneLine(lines: readonly string[]): string {
  const inner = lines.map((line) => /^\u2068([^\u2068\u2069]*)\u2069$/u.exec(line)?.[1]);
  return lines.length > 1 && inner.every((line) => line !== undefined)
    ? `\u2068${inner.join(", ")}\u2069`
    : lines.join(", ");
}

/** The clinic's name at the left edge, its address at the right. */
function letterheadPieces({ clinic }: Handout, document: Tag, setting: Setting): Piece[] {
  const { full, styles, step } = setting.sheet;
  const width = full.width / 2 - step;
  const right = { x: full.x + full.width - width, width };
  const look = lookOf(styles.letterhead);
  const name = wordPieces(
    words(clinic.name),
    lookOf(strongOf(styles.letterhead)),
    { x: full.x, width },
    tag("P", document),
    setting,
    "letterhead",
  );
  const spans = spansOf(words(inOneLine(clinic.address)), look, tag("P", document), setting);
  const address = linePieces(linesOf(spans, width, setting, "end"), right, "letterhead");
  return [...stacked(name).map((piece): Piece => ({ ...piece, beside: true })), ...address];
}
