import type { DayMark, Month, MonthDay } from "#handout/handout.js";
import { baselineOf } from "./lines.js";
import { rule } from "./marks.js";
import { legendPieces, shapeMark } from "./month-marks.js";
import { wordPieces } from "./paragraph.js";
import { type Mark, type Piece, spaced, together } from "./piece.js";
import type { Setting } from "./setting.js";
import type { Sheet, Style } from "./sheet.js";
import { lookOf, strongOf } from "./spans.js";
import { type Tag, tag } from "./tag.js";

/** A month as a grid of rules, with its legend: never split. */
export function monthPieces(month: Month, parent: Tag, setting: Setting): Piece[] {
  const { sheet } = setting;
  const owner = tag("Table", parent);
  const title = wordPieces(
    [{ kind: "text", text: month.title }],
    lookOf(sheet.styles.partTitle),
    sheet.text,
    tag("Caption", owner),
    setting,
    "caption",
  );
  const legend = legendPieces(month.legend, parent, setting);
  return together([...title, gridPiece(month, owner, setting), ...spaced(legend, sheet.step)]);
}

/** Where things stand in the grid, in points. */
const gridOf = ({ text, styles, large }: Sheet) => {
  const style: Style = { ...styles.small, colour: "ink" };
  const head = style.leading + 4;
  const row = large ? 36 : 26;
  return { style, head, row, column: text.width / 7, x: text.x + 4, shape: large ? 16 : 11, shapeX: large ? 26 : 19 };
};

function gridPiece({ weekdays, weeks }: Month, owner: Tag, setting: Setting): Piece {
  const { text } = setting.sheet;
  const grid = gridOf(setting.sheet);
  const heads = tag("TR", tag("THead", owner));
  const head = weekdays.map(({ short, long }, index) => {
    const cell = tag("TH", heads, { scope: "Column", expanded: long });
    return words(short, grid.x + index * grid.column, baselineOf(grid.head), strongOf(grid.style), cell, setting);
  });
  const body = tag("TBody", owner);
  const rows = weeks.flatMap((week, index) => {
    const top = grid.head + index * grid.row;
    const row = tag("TR", body);
    return [
      ...week.flatMap((day, nth) => dayMarks(day, grid.x + nth * grid.column, top, tag("TD", row), setting)),
      rule(text.x, top + grid.row - 0.25, text.width, 0.5, "hairline"),
    ];
  });
  return {
    what: "month",
    ...text,
    height: grid.head + weeks.length * grid.row,
    before: 0,
    keep: false,
    marks: [...head, rule(text.x, grid.head - 0.5, text.width, 1, "ink"), ...rows],
  };
}

const isVisit = ({ mark }: DayMark): boolean => mark !== "closed";

/** A day: its number, read aloud as its label, and a shape for each mark, read aloud as its words. */
function dayMarks(day: MonthDay, x: number, top: number, cell: Tag, setting: Setting): Mark[] {
  const { style, row, shape, shapeX } = gridOf(setting.sheet);
  const plain: Style = day.inMonth ? style : { ...style, colour: "quiet" };
  const look = day.marks.some(isVisit) ? strongOf(style) : plain;
  const middle = baselineOf(row) - style.size * 0.334;
  const number = tag("Span", cell, { actual: day.label });
  return [
    { kind: "empty", tag: cell },
    words(day.text, x, top + baselineOf(row), look, number, setting),
    ...day.marks.map(({ mark, text }, index) =>
      shapeMark(
        mark,
        x + shapeX + index * (shape + 3),
        top + middle - shape / 2,
        shape,
        tag("Figure", cell, { alt: text }),
      ),
    ),
  ];
}

function words(text: string, x: number, y: number, style: Style, owner: Tag, { set, width }: Setting): Mark {
  const drawn = set(text, style.weight, undefined);
  return { kind: "text", x, y, width: width(drawn, style), text: drawn, style, tabular: false, tag: owner };
}
