import stringWidth from "string-width";
import type { Estimate, Span } from "#compute/facts.js";
import type { Drawing, Figure, Label, Shape } from "#handout/handout.js";
import { inARow } from "#locale/spaces.js";
import { type Page, plainOn } from "../page.js";
import { box } from "./shapes.js";

type Row = Estimate["byDate"][number];

const size = 15;
/** Its words are large enough to read in the column of the text, on both papers. */
const wide = 480;
/** About how wide a letter of a label is; a Chinese one is two letters wide. */
const letter = 8;
/** A tired reader does not follow more. */
const mostDays = 4;

/**
 * What it will have come to by the end of some days: a bar a day, to the least and on to the most; the last is the whole
 * cost. What is paid is a line down through them. Every label has a row or a corner of its own, so that none meets another.
 * null where there is no range to show: the words say it.
 */
export const costByDateOn = (page: Page, estimate: Estimate): Figure | null =>
  barsOn(page, estimate, daysShown(estimate.byDate));

/** The whole cost alone, from low to high, with what is paid; null where there is no range to show. */
export const costBarOn = (page: Page, estimate: Estimate): Figure | null =>
  barsOn(page, estimate, estimate.byDate.slice(-1));

function barsOn(page: Page, estimate: Estimate, rows: readonly Row[]): Figure | null {
  const { currency, whole, paid } = estimate;
  if (whole.low === whole.high || rows.length === 0) return null;
  const words = (key: string, values: Record<string, string> = {}) =>
    plainOn(page, `handout:estimate.picture.${key}`, values);
  const money = (minor: number) => page.voice.money(minor, currency);
  const amounts = ({ low, high }: Span) =>
    low === high ? money(low) : words("range", { low: money(low), high: money(high) });

  const today = page.view.discharged.slice(0, 10);
  const days = rows.map(({ day }) =>
    day === today ? words("today") : words("day", { day: page.voice.monthDay(day) }),
  );
  const ranges = rows.map((row) => amounts(row.total));
  const hasLikely = whole.low < whole.likely && whole.likely < whole.high;
  const told: Told = {
    bars: rows.map(({ total }, i) => ({ ...total, day: days[i] ?? "", range: ranges[i] ?? "" })),
    most: Math.max(whole.high, paid),
    paid: paid > 0 ? { minor: paid, words: words("paid", { amount: money(paid) }) } : null,
    likely: hasLikely ? { minor: whole.likely, words: words("likely", { amount: money(whole.likely) }) } : null,
  };
  const from = widest(days) + 10;
  const to = wide - widest(ranges) - 10;
  return {
    kind: "figure",
    id: rows.length > 1 ? "cost-by-date" : "cost-bar",
    ...drawn(told, { width: wide, from, to, rowHeight: 22, text: 16, bar: 4 }),
    narrow: drawn(told, { width: 330, from: 0, to: 330, rowHeight: 44, text: 16, bar: 22 }),
    alt: inARow([
      ...rows.map((row) => words("by", { day: page.voice.day(row.day), amount: amounts(row.total) })),
      ...(told.likely ? [`${told.likely.words}.`] : []),
      ...(told.paid ? [`${told.paid.words}.`] : []),
    ]),
    caption: [],
  };
}

type Point = { minor: number; words: string };
type Told = { bars: (Span & { day: string; range: string })[]; most: number; paid: Point | null; likely: Point | null };
/** Bars run from one x to another. text: the baseline of a row's words, bar: the top of its bar, both from the top of the row. */
type Grid = { width: number; from: number; to: number; rowHeight: number; text: number; bar: number };
const barHeight = 14;

function drawn({ bars, most, paid, likely }: Told, grid: Grid): Drawing {
  const { width, from, to, rowHeight } = grid;
  const x = (minor: number) => from + (minor / most) * (to - from);
  const top = paid ? 22 : 2;
  const foot = top + bars.length * rowHeight;
  const barTop = (row: number) => top + row * rowHeight + grid.bar;
  const line = (at: number, y: number, down: number, rest: Partial<Shape>): Shape => ({
    ...{ path: `M${at} ${y}V${down}`, fill: "none", width: 2, stroke: "ink" },
    ...rest,
  });
  const overAll = grid.bar < grid.text;
  const paidLines = overAll ? [{ y: top - 6, down: foot - 2 }] : bars.map((_, i) => barEnds(barTop(i)));
  const last = barTop(bars.length - 1);
  return {
    width,
    height: foot + (likely ? 20 : 4),
    shapes: [
      ...bars.flatMap(({ low, high }, row) => barOf(x, low, high, barTop(row))),
      ...(likely ? [line(x(likely.minor), last - 2, foot + 2, {})] : []),
      ...(paid ? paidLines.map(({ y, down }) => line(x(paid.minor), y, down, { stroke: "accent", width: 3 })) : []),
    ],
    labels: [
      ...(paid ? [corner(paid.words, x(paid.minor), 14, width)] : []),
      ...bars.flatMap(({ day, range }, row): Label[] => {
        const y = top + row * rowHeight + grid.text;
        return [
          { text: day, x: 0, y, size, align: "start" },
          { text: range, x: width, y, size, align: "end" },
        ];
      }),
      ...(likely ? [corner(likely.words, x(likely.minor), foot + 16, width)] : []),
    ],
  };
}

const barEnds = (y: number) => ({ y: y - 3, down: y + barHeight + 3 });

/** Words at a line, on the side where they have room. */
function corner(text: string, at: number, y: number, width: number): Label {
  const wide = widest([text]);
  return at < width / 2
    ? { text, x: Math.max(0, Math.min(at, width - wide)), y, size, align: "start" }
    : { text, x: Math.min(width, Math.max(at, wide)), y, size, align: "end" };
}

/** The days that are shown, evenly chosen from all on which something is charged; the first and the last always. */
function daysShown(byDate: readonly Row[]): readonly Row[] {
  if (byDate.length <= mostDays) return byDate;
  const chosen = Array.from({ length: mostDays }, (_, i) => Math.round((i * (byDate.length - 1)) / (mostDays - 1)));
  return byDate.filter((_, i) => chosen.includes(i));
}

/** What is sure is filled, and what may come on top has a broken outline. */
function barOf(x: (minor: number) => number, low: number, high: number, y: number): Shape[] {
  const bar = (from: number, to: number) => box(x(from), y, x(to), y + barHeight);
  return [
    ...(high > low
      ? [{ path: bar(low, high), fill: "none", stroke: "ink", width: 1.5, dashed: true } satisfies Shape]
      : []),
    ...(low > 0 ? [{ path: bar(0, low), fill: "pale", stroke: "ink", width: 1.5 } satisfies Shape] : []),
  ];
}

const widest = (labels: readonly string[]): number => Math.max(0, ...labels.map((text) => stringWidth(text))) * letter;
