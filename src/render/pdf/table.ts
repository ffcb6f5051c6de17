import type { Cell, Table } from "#handout/handout.js";
import { lineMarks } from "./line-pieces.js";
import { evenLinesOf, type Line, linesOf } from "./lines.js";
import { rule } from "./marks.js";
import { wordPieces } from "./paragraph.js";
import { type Mark, type Piece, spaced, together } from "./piece.js";
import type { Setting } from "./setting.js";
import { lookOf, spansOf, strongOf } from "./spans.js";
import { type Shape, shapesOf } from "./table-shape.js";
import { type Tag, tag } from "./tag.js";

/** A table of rules, no boxes. A row is never split; the head is printed again where a page begins inside the table. */
export function tablePieces(table: Table, parent: Tag, setting: Setting): Piece[] {
  const { sheet } = setting;
  return shapesOf(table, setting).flatMap((shape, part) =>
    spaced(partPieces(table, shape, part === 0, tag("Table", parent), setting), part === 0 ? 0 : 2 * sheet.step),
  );
}

function partPieces(table: Table, shape: Shape, captioned: boolean, owner: Tag, setting: Setting): Piece[] {
  const { sheet } = setting;
  const { column, style } = shape;
  const padding = table.dense ? 2 : 4;
  const caption =
    captioned && !table.dense
      ? wordPieces(
          table.caption,
          lookOf(strongOf(sheet.styles.note)),
          column,
          tag("Caption", owner),
          setting,
          "caption",
        ).map((piece): Piece => ({ ...piece, keep: true }))
      : [];
  const [top, body, bottom] = [tag("THead", owner), tag("TBody", owner), tag("TFoot", owner)];
  const bold = { ...shape, style: strongOf(style) };
  const head = table.head.length === 0 ? [] : [rowPiece(table.head, bold, "head", tag("TR", top), padding, setting)];
  const rows = table.rows.map((cells) => rowPiece(cells, shape, "row", tag("TR", body), padding, setting));
  const foot = table.foot.map((cells, index) =>
    rowPiece(cells, shape, index === 0 ? "first-foot" : "foot", tag("TR", bottom), padding, setting),
  );
  const lines = [...rows, ...foot].map((piece, index): Piece => {
    const repeat = head[0];
    // The first two rows stay together, and the last two; the foot never leaves the last row.
    const keep = (index === 0 && rows.length > 1) || index >= rows.length - 2;
    return { ...piece, keep, ...(repeat && index > 0 ? { repeat } : {}) };
  });
  const pieces = [...caption, ...head.map((piece): Piece => ({ ...piece, keep: true, bond: true })), ...lines];
  const whole = pieces.reduce((sum, piece) => sum + piece.height, 0) < (sheet.bottom - sheet.top.other) * 0.5;
  const wide = column.x < sheet.text.x;
  return (whole ? together(pieces) : pieces).map((piece, index) => ({
    ...piece,
    keep: piece.keep && index < pieces.length - 1,
    ...(wide ? { clear: true as const } : {}),
  }));
}

type Kind = "head" | "row" | "first-foot" | "foot";

function rowPiece(cells: Cell[], shape: Shape, kind: Kind, row: Tag, padding: number, setting: Setting): Piece {
  const { column } = shape;
  const breakLines = kind === "head" ? evenLinesOf : linesOf;
  const set = shape.columns.map(({ index, x, width }) => {
    const cell: Cell = cells[index] ?? { inlines: [], align: "start" };
    const owner = cellTag(kind, index, row, cell);
    const look = { ...lookOf(shape.style), tabular: cell.align === "end" };
    const own = { ...setting, direction: cell.spoken?.direction ?? setting.direction };
    const lines = breakLines(spansOf(cell.inlines, look, owner, own), width, own, cell.align);
    return { owner, x, lines: own.direction === setting.direction ? lines : lines.map((line) => fromEnd(line, width)) };
  });
  const inner = (lines: { height: number }[]) => lines.reduce((sum, { height }) => sum + height, 0);
  const baseline = Math.max(0, ...set.map(({ lines }) => lines[0]?.baseline ?? 0));
  // Cells stand level on their first line; in the head, on their last.
  const drop = (lines: { height: number; baseline: number }[]) =>
    kind === "head" ? tallest - inner(lines) : baseline - (lines[0]?.baseline ?? 0);
  const tallest = Math.max(shape.style.leading, ...set.map(({ lines }) => inner(lines)));
  const height = Math.max(tallest, ...set.map(({ lines }) => inner(lines) + drop(lines))) + 2 * padding;
  const marks = set.flatMap(({ owner, x, lines }): Mark[] => {
    let y = padding + drop(lines);
    const drawn = lines.flatMap((line) => {
      const onLine = lineMarks(line, x, y);
      y += line.height;
      return onLine;
    });
    return [{ kind: "empty", tag: owner }, ...drawn];
  });
  const strong = kind === "head" ? [rule(column.x, height - 0.5, column.width, 1, "ink")] : [];
  const light = kind === "row" || kind === "foot" ? [rule(column.x, height - 0.25, column.width, 0.5, "hairline")] : [];
  const above = kind === "first-foot" ? [rule(column.x, -0.5, column.width, 1, "ink")] : [];
  return { what: "row", ...column, height, before: 0, keep: false, marks: [...marks, ...strong, ...light, ...above] };
}

/** A line that begins at the other edge of its cell than the page's do. */
const fromEnd = (line: Line, width: number): Line => ({
  ...line,
  runs: line.runs.map((run) => ({ ...run, x: width - run.x - run.width })),
});

const cellTag = (kind: Kind, index: number, row: Tag, { spoken }: Cell): Tag => {
  const language = spoken ? { language: spoken.language } : {};
  if (kind === "head") return tag("TH", row, { scope: "Column", ...language });
  return index === 0 ? tag("TH", row, { scope: "Row", ...language }) : tag("TD", row, language);
};
