import type { Handout, Inline } from "#handout/handout.js";
import type { Logo } from "#logo/logo.js";
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
export function openingPieces(handout: Handout, logo: Logo | null, document: Tag, setting: Setting): Piece[] {
  const { full, styles, step } = setting.sheet;
  const title = titlePieces(words(handout.title), styles.title, full, tag("H1", document), setting, "title");
  const subtitle = wordPieces(handout.subtitle, lookOf(styles.subtitle), full, tag("P", document), setting);
  const notice = wordPieces(handout.translationNotice, lookOf(styles.note), full, tag("P", document), setting);
  return together([
    ...logoPieces(logo, setting),
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

/** The clinic's name at the left edge, its address at the right, in the room that a short name leaves. */
function letterheadPieces({ clinic }: Handout, document: Tag, setting: Setting): Piece[] {
  const { full, styles, step } = setting.sheet;
  const strong = strongOf(styles.letterhead);
  const width = Math.min(
    full.width / 2 - step,
    setting.width(setting.set(clinic.name, strong.weight, undefined), strong) + 1,
  );
  const room = full.width - width - 2 * step;
  const right = { x: full.x + full.width - room, width: room };
  const look = lookOf(styles.letterhead);
  const name = wordPieces(
    words(clinic.name),
    lookOf(strong),
    { x: full.x, width },
    tag("P", document),
    setting,
    "letterhead",
  );
  const spans = spansOf(words(inOneLine(clinic.address)), look, tag("P", document), setting);
  const address = linePieces(linesOf(spans, room, setting, "end"), right, "letterhead");
  const own = (clinic.letterhead ?? []).flatMap((line) =>
    wordPieces(line, look, full, tag("P", document), setting, "letterhead"),
  );
  const [first, ...others] = own;
  return [
    ...stacked(name).map((piece): Piece => ({ ...piece, beside: true })),
    ...address,
    ...(first ? [{ ...first, clear: true as const }, ...others] : []),
  ];
}

/** The box a logo is fitted into, in points: a line of its own, so that a wide one is not drawn small. */
const logoBox = { width: 240, height: 36 };

/** The logo above the clinic's name, which says in words whose it is. */
function logoPieces(logo: Logo | null, { sheet }: Setting): Piece[] {
  if (!logo) return [];
  const scale = Math.min(logoBox.width / logo.width, logoBox.height / logo.height);
  const [width, height] = [logo.width * scale, logo.height * scale];
  const mark = { kind: "image" as const, x: sheet.full.x, y: 0, width, height, png: logo.print, tag: null };
  return [{ what: "letterhead", ...sheet.full, height: height + sheet.step / 2, before: 0, keep: true, marks: [mark] }];
}
