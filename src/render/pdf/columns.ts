import type { Columns, Leaf } from "#handout/handout.js";
import { leadsOn } from "./leads-on.js";
import { type Mark, type Piece, spaced } from "./piece.js";
import type { Setting } from "./setting.js";
import type { Column } from "./sheet.js";
import { lower } from "./stack.js";

type Draw = (leaf: Leaf, setting: Setting) => Piece[];

/**
 * Columns of equal width as one piece that is never split. They stand under each other in large print (but for its short form), where they are taller
 * than half a page, and where something in them needs more width.
 */
export function columnPieces({ columns }: Columns, setting: Setting, draw: Draw): Piece[] {
  const { sheet } = setting;
  const gutter = 2 * sheet.step;
  const width = (sheet.text.width - gutter * (columns.length - 1)) / columns.length;
  const places = columns.map((_, index): Column => ({ x: sheet.text.x + index * (width + gutter), width }));
  const stacks = columns.map((column, index) => stackOf(column, narrowed(setting, places[index] ?? sheet.text), draw));
  const height = Math.max(0, ...stacks.map((stack) => stack.height));
  const roomy = stacks.every(({ pieces }, index) => pieces.every((piece) => isWithin(piece, places[index])));
  if (!sheet.abreast || !roomy || height > (sheet.bottom - sheet.top.other) / 2)
    return stackOf(columns.flat(), setting, draw).pieces;
  const marks = stacks.flatMap((stack) => stack.marks);
  return [{ what: "columns", ...sheet.text, height, before: 0, keep: false, marks }];
}

/** What is drawn in a column has no wider place to go to. */
const narrowed = (setting: Setting, column: Column): Setting => ({
  ...setting,
  sheet: { ...setting.sheet, text: column, full: column },
});

const near = 0.02;
const isWithin = (piece: Piece, column: Column | undefined): boolean =>
  column !== undefined &&
  [piece, ...piece.marks.flatMap(boxOf)].every(
    ({ x, width }) => x >= column.x - near && x + width <= column.x + column.width + near,
  );
const boxOf = (mark: Mark): { x: number; width: number }[] => {
  if (mark.kind === "path") return [mark.box];
  if (mark.kind !== "text" || !mark.text.trim()) return [];
  // The space at the end of a line hangs over.
  const hanging = (mark.text.length - mark.text.trimEnd().length) * mark.style.size * 0.5;
  return [{ x: mark.x, width: mark.width - hanging }];
};

/** Blocks under each other: as pieces, and as the marks they come to with the height they take. */
function stackOf(leaves: Leaf[], setting: Setting, draw: Draw): { pieces: Piece[]; marks: Mark[]; height: number } {
  const pieces = leaves.flatMap((leaf, index) => {
    const drawn = draw(leaf, setting);
    const kept = leadsOn(leaves, index, drawn) ? drawn.map((piece) => ({ ...piece, keep: true })) : drawn;
    return spaced(kept, index === 0 ? 0 : setting.sheet.step / 2);
  });
  let height = 0;
  const marks = pieces.flatMap((piece, index) => {
    height += index === 0 ? 0 : piece.before;
    const placed = lower(piece.marks, height);
    height += piece.beside ? 0 : piece.height;
    return placed;
  });
  return { pieces, marks, height };
}
