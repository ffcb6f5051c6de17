import type { Drawing, Figure, Label, Shape } from "#handout/handout.js";
import { placeOf } from "#problems/place.js";
import { problem } from "#problems/problem.js";
import { wordPieces } from "./paragraph.js";
import { type Mark, type Piece, spaced } from "./piece.js";
import type { Setting } from "./setting.js";
import type { Column, Sheet, Style } from "./sheet.js";
import { lookOf } from "./spans.js";
import { type Tag, tag } from "./tag.js";

/**
 * A drawing with its caption under it, in the column of the text; over the full width where its labels would be too small; where
 * they would be even so, as it is drawn for a phone.
 */
export function figurePieces(figure: Figure, parent: Tag, setting: Setting): Piece[] {
  const { sheet } = setting;
  const { styles, step } = sheet;
  const read = ({ width }: Column, drawing: Drawing) => width / drawing.width >= leastScale(drawing, sheet);
  const drawing = figure.narrow && !read(sheet.full, figure) ? figure.narrow : figure;
  const wide = !read(sheet.text, drawing);
  const column = wide ? sheet.full : sheet.text;
  const scale = scaleIn(column, drawing, sheet);
  const width = drawing.width * scale;
  const height = drawing.height * scale;
  const owner = tag("Figure", parent, { alt: figure.alt });
  const box = { x: column.x, y: 0, width, height };
  const shapes = drawing.shapes.flatMap((shape) => shapeMark(shape, scale, box, owner, figure.id, setting));
  const labels = drawing.labels.map((label) => labelMark(label, scale, column, owner, setting));
  const piece: Piece = {
    what: "figure",
    x: column.x,
    width,
    height,
    before: 0,
    keep: figure.caption.length > 0,
    marks: [...shapes, ...labels],
  };
  const caption = wordPieces(figure.caption, lookOf(styles.note), column, tag("P", parent), setting, "caption");
  const pieces = [piece, ...spaced(caption, step / 2)];
  return wide ? pieces.map((piece) => ({ ...piece, clear: true as const })) : pieces;
}

/**
 * A unit is a point or, for the labels' sake, more. A third of the page is the limit (half of it in large print), or two
 * thirds where the labels would be too small.
 */
function scaleIn(column: Column, drawing: Drawing, sheet: Sheet): number {
  const least = leastScale(drawing, sheet);
  const page = (sheet.bottom - sheet.top.other) / drawing.height;
  const high = Math.min((page * 2) / 3, Math.max(page * (sheet.large ? 0.5 : 0.36), least));
  return Math.min(column.width / drawing.width, high, Math.max(1, least));
}

/** At which the smallest label is as large as the notes of the page. */
const leastScale = ({ labels }: Drawing, { styles }: Sheet): number =>
  Math.max(0, ...labels.map(({ size }) => (styles.small.size - 1) / size));

/** Words in a drawing, moved where they would otherwise leave the column. */
function labelMark(label: Label, scale: number, column: Column, owner: Tag, setting: Setting): Mark {
  const size = label.size * scale;
  const style: Style = { size, leading: size * 1.2, weight: "regular", colour: "ink" };
  const text = setting.set(label.text, style.weight, undefined);
  const width = setting.width(text, style);
  const start = column.x + label.x * scale - { start: 0, center: width / 2, end: width }[label.align];
  const x = Math.max(column.x, Math.min(start, column.x + column.width - width));
  return { kind: "text", x, y: label.y * scale, width, text, style, tabular: false, tag: owner };
}

/** Path data of SVG 1.1: commands and numbers, beginning with a move. */
const readable = /^\s*[Mm][\sMmLlHhVvCcSsQqTtAaZz0-9eE.,+-]*$/;

function shapeMark(
  { path, fill, stroke, width, dashed, upright }: Shape,
  scale: number,
  box: { x: number; y: number; width: number; height: number },
  owner: Tag,
  figure: string,
  setting: Setting,
): Mark[] {
  if (!readable.test(path)) {
    setting.report(problem("figure-unreadable", placeOf({}), { figure, path }));
    return [];
  }
  const line = width ?? 1;
  return [
    {
      kind: "path",
      x: box.x,
      y: box.y,
      scale,
      path,
      fill: fill === "none" ? null : fill,
      stroke: stroke ? { colour: stroke, width: line, dash: dashed ? line * 3 : null } : null,
      box,
      clip: true,
      ...(upright === undefined ? {} : { upright }),
      tag: owner,
    },
  ];
}
