import { getISODay, parseISO } from "date-fns";
import stringWidth from "string-width";
import type { Day } from "#compute/facts.js";
import type { Drawing, Figure, Label, Shape } from "#handout/handout.js";
import { inARow } from "#locale/spaces.js";
import { courseDays, dayMarks, type Mark, markOrder } from "../blocks/day-marks.js";
import { type Page, plainOn } from "../page.js";
import { circle, house } from "./shapes.js";

const cell = 46;
/** The words under the first day may be wider than its cell. */
const edge = 10;
const rowHeight = 68;
/** Two weeks and a day: a course of 14 days with the day of discharge. On a narrow screen, a week. */
const inRow = { wide: 15, narrow: 7 };

/** Each mark has a shape of its own, so that it is told apart without colour. */
const drawings: Record<Mark, (x: number, y: number) => Shape> = {
  discharge: (x, y) => ({ path: house(x, y, 12), fill: "ink" }),
  booked: (x, y) => ({ path: circle(x, y, 12), fill: "accent" }),
  expected: (x, y) => ({ path: circle(x, y, 11), fill: "pale", stroke: "ink", width: 2 }),
  possible: (x, y) => ({ path: circle(x, y, 11), fill: "none", stroke: "ink", width: 1.5, dashed: true }),
  closed: (x, y) => ({ path: `M${x - 6} ${y}H${x + 6}`, fill: "none", stroke: "ink", width: 1.5 }),
};

/** The course as a row of days, each with its mark; null where there is no visit to show. */
export function courseStripOn(page: Page): Figure | null {
  if (page.view.course.visits.length === 0) return null;
  const days = courseDays(page.view);
  const marks = dayMarks(page.view);
  const used = markOrder.filter((mark) => days.some((day) => firstMark(marks, day) === mark));
  const rows = Math.ceil(days.length / inRow.wide);
  const even = Math.ceil(days.length / rows);
  return {
    kind: "figure",
    id: "course-strip",
    ...stripOf(page, days, used, even, Math.max(even, 10)),
    narrow: stripOf(page, days, used, inRow.narrow, inRow.narrow),
    alt: altOf(page, days, marks, used),
    caption: [],
  };
}

/** Rows of so many days, in the width of so many cells. */
function stripOf(page: Page, days: Day[], used: Mark[], perRow: number, cells: number): Drawing {
  const marks = dayMarks(page.view);
  const rows = Math.ceil(days.length / perRow);
  const width = 2 * edge + cells * cell;
  const legend = legendOf(page, used, rows * rowHeight, width);
  return {
    width,
    height: rows * rowHeight + legend.height,
    shapes: [...days.flatMap((day, index) => shapeOf(marks, day, middleOf(index, perRow))), ...legend.shapes],
    labels: [
      ...days.flatMap((day, index) => labelsOf(page, day, middleOf(index, perRow), index % perRow === 0)),
      ...legend.labels,
    ],
  };
}

/** The strip has room for one mark a day: a visit says more than the door. */
const firstMark = (marks: Map<Day, Mark[]>, day: Day): Mark | undefined =>
  markOrder.find((mark) => marks.get(day)?.includes(mark));

type Point = { x: number; y: number };
const middleOf = (index: number, perRow: number): Point => ({
  x: edge + (index % perRow) * cell + cell / 2,
  y: Math.floor(index / perRow) * rowHeight + 34,
});

function shapeOf(marks: Map<Day, Mark[]>, day: Day, { x, y }: Point): Shape[] {
  const mark = firstMark(marks, day);
  return [mark ? drawings[mark](x, y) : { path: circle(x, y, 2), fill: "ink" }];
}

/** The day of the week over the mark; the date under it, with the month where a row or a month begins. */
function labelsOf({ voice }: Page, day: Day, { x, y }: Point, beginsRow: boolean): Label[] {
  // A long date under the first day of a row begins at the edge.
  const middle = (text: string) => Math.max(x, (stringWidth(text) * labelSize) / 4);
  const label = (text: string, down: number): Label => ({
    ...{ text, x: middle(text), y: y + down, size: labelSize, align: "center" },
  });
  const withMonth = beginsRow || day.endsWith("-01");
  return [
    label(voice.weekdayInColumn(getISODay(parseISO(day))), -19),
    label(withMonth ? voice.shortDate(day) : voice.dayNumber(day), 26),
  ];
}

const labelSize = 14.7;
const legendRow = 28;
/** From so many days in a row on, the words of two marks have room side by side. */
const wide = 14;

/** The words of the marks under the days, in two columns where there is room for them. */
function legendOf(page: Page, used: Mark[], top: number, width: number) {
  const legendAcross = width >= wide * cell ? 2 : 1;
  const at = (index: number): Point => ({
    x: (index % legendAcross) * (width / legendAcross) + cell / 2,
    y: top + Math.floor(index / legendAcross) * legendRow + 16,
  });
  return {
    shapes: used.map((mark, index) => drawings[mark](at(index).x, at(index).y)),
    labels: used.map((mark, index): Label => {
      const { x, y } = at(index);
      return {
        text: plainOn(page, `calendar:legend.${mark}`),
        x: x + cell / 2,
        y: y + 5,
        size: labelSize,
        align: "start",
      };
    }),
    height: Math.ceil(used.length / legendAcross) * legendRow,
  };
}

function altOf(page: Page, days: Day[], marks: Map<Day, Mark[]>, used: Mark[]): string {
  const { voice } = page;
  const told = used.map((mark) => {
    const runs = runsOf(days, (day) => firstMark(marks, day) === mark);
    const told = runs.map(([first, last]) =>
      first === last
        ? voice.monthDay(first)
        : plainOn(page, "calendar:date-to-date", { first: voice.monthDay(first), last: voice.monthDay(last) }),
    );
    return plainOn(page, "drawings:course.days", {
      what: plainOn(page, `calendar:legend.${mark}`),
      days: voice.list(told),
    });
  });
  return inARow([plainOn(page, "drawings:course.alt"), ...told]);
}

/** The first and last day of each stretch of days that follow each other and are alike. */
function runsOf(days: Day[], alike: (day: Day) => boolean): [Day, Day][] {
  const runs: [Day, Day][] = [];
  for (const [index, day] of days.entries()) {
    if (!alike(day)) continue;
    const run = runs.at(-1);
    if (run && run[1] === days[index - 1]) run[1] = day;
    else runs.push([day, day]);
  }
  return runs;
}
