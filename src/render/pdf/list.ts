import type { Item, List } from "#handout/handout.js";
import { linePieces } from "./line-pieces.js";
import { linesOf } from "./lines.js";
import { tickBox } from "./marks.js";
import { bonded, type Mark, type Piece, spaced } from "./piece.js";
import { inDigits, type Setting } from "./setting.js";
import type { Style } from "./sheet.js";
import { type Look, lookOf, spansOf, strongOf } from "./spans.js";
import { type Tag, tag } from "./tag.js";

const numbering = { bullet: "Disc", number: "Decimal", tick: "None" } as const;

/**
 * A list with its marks hanging left of the words. An item shorter than a third of a page is never split. A bullet list of
 * four or more whose items all fit on a line of half the width runs two to a line.
 */
export function listPieces(list: List, weight: "urgent" | "plain", parent: Tag, setting: Setting): Piece[] {
  return pairsOf(list, weight, parent, setting) ?? rowsOf(list, weight, parent, setting);
}

/** Two items to a line, read from the start to the end of each line; null where an item is too long for that. */
function pairsOf(list: List, weight: "urgent" | "plain", parent: Tag, setting: Setting): Piece[] | null {
  if (list.mark !== "bullet" || list.items.length < 4 || setting.sheet.large) return null;
  const { text, step } = setting.sheet;
  const width = (text.width - step) / 2;
  const inHalf = (index: number): Setting => {
    const x = index % 2 === 0 ? text.x : text.x + width + step;
    return { ...setting, sheet: { ...setting.sheet, text: { x, width } } };
  };
  const owner = tag("L", parent, { numbering: numbering.bullet });
  const items: Piece[] = [];
  for (const [index, item] of list.items.entries()) {
    const [only, ...more] = rowsOf({ ...list, items: [item] }, weight, parent, inHalf(index), owner);
    if (!only || more.length > 0) return null;
    items.push(only);
  }
  const last = items.length - 1;
  return items.map((piece, index) => {
    const starts = index % 2 === 0;
    const rest = {
      ...piece,
      before: index < 2 || !starts ? 0 : step / 4,
      keep: starts ? index < last : index < 2 || index >= last - 2,
    };
    return starts && index < last ? { ...rest, beside: true as const } : rest;
  });
}

function rowsOf(
  list: List,
  weight: "urgent" | "plain",
  parent: Tag,
  setting: Setting,
  owner = tag("L", parent, { numbering: numbering[list.mark] }),
): Piece[] {
  const { sheet } = setting;
  const { styles } = sheet;
  const urgent = weight === "urgent";
  const style = urgent ? styles.urgent : styles.body;
  const look: Look = urgent ? { style, phone: styles.urgentPhone } : lookOf(style);
  const note = urgent ? styles.urgentNote : styles.note;
  const labels = list.items.map((_, index) => labelOf(list, index, strongOf(style), setting));
  const hang = Math.max(...labels.map(({ width }) => width), 0) + sheet.step;
  const third = (sheet.bottom - sheet.top.other) / 3;
  return list.items.flatMap((item, index) => {
    const pieces = itemPieces(item, labels[index], hang, look, note, owner, setting);
    const height = pieces.reduce((sum, piece) => sum + piece.height, 0);
    // No item stands alone at the foot or the head of a page.
    const bound = list.items.length > 1 && (index === 0 || index === list.items.length - 2);
    const whole = height < third ? bonded(pieces) : pieces;
    const tied = bound
      ? whole.map((piece, nth) => (nth === pieces.length - 1 ? { ...piece, keep: true } : piece))
      : whole;
    return spaced(tied, index === 0 ? 0 : sheet.step * 0.4);
  });
}

type Label = { width: number; mark: (x: number, baseline: number, tag: Tag) => Mark; actual?: string };

function labelOf(list: List, index: number, style: Style, setting: Setting): Label {
  if (list.mark === "tick") {
    const size = setting.sheet.tick;
    return { width: size, mark: (x, baseline, owner) => tickBox(x, baseline, size, style, owner), actual: "\u2610" };
  }
  const words = list.mark === "bullet" ? "\u2022" : inDigits(index + 1, setting.digits);
  const text = setting.set(words, style.weight, undefined);
  const width = setting.width(text, style);
  return {
    width,
    mark: (x, y, owner) => ({ kind: "text", x, y, width, text, style, tabular: false, tag: owner }),
  };
}

function itemPieces(
  { inlines, note }: Item,
  label: Label | undefined,
  hang: number,
  look: Look,
  noteStyle: Style,
  list: Tag,
  setting: Setting,
): Piece[] {
  const { text } = setting.sheet;
  const column = { x: text.x + hang, width: text.width - hang };
  const item = tag("LI", list);
  const body = tag("LBody", item);
  const lines = linesOf(spansOf(inlines, look, tag("P", body), setting), column.width, setting);
  const notes = note ? linesOf(spansOf(note, lookOf(noteStyle), tag("P", body), setting), column.width, setting) : [];
  const pieces = linePieces([...lines, ...notes], column, "item");
  return pieces.map((piece, index) => {
    if (index > 0 || !label) return piece;
    const says = label.actual === undefined ? {} : { actual: label.actual };
    const baseline = (lines[0] ?? notes[0])?.baseline ?? 0;
    return { ...piece, marks: [label.mark(text.x, baseline, tag("Lbl", item, says)), ...piece.marks] };
  });
}
