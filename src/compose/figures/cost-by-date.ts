import stringWidth from "string-width";
import type { Estimate, Span } from "#compute/facts.js";
import type { Figure, Label, Shape } from "#handout/handout.js";
import { inARow } from "#locale/spaces.js";
import { type Page, plainOn } from "../page.js";
import { box } from "./shapes.js";

type Row = Estimate["byDate"][number];

const width = 500;
const size = 15;
const rowHeight = 22;
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
  const left = widest(days) + 10;
  const right = width - widest(ranges) - 10;
  const most = Math.max(whole.high, paid);
  const x = (minor: number) => left + (minor / most) * (right - left);

  const top = paid > 0 ? 22 : 2;
  const foot = top + rows.length * rowHeight;
  const hasLikely = whole.low < whole.likely && whole.likely < whole.high;
  const corner = (text: string, at: number, y: number): Label =>
    at < width / 2 ? { text, x: at, y, size, align: "start" } : { text, x: at, y, size, align: "end" };
  const line = (path: string, rest: Partial<Shape>): Shape => ({ path, fill: "none", width: 2, ...rest });
  return {
    kind: "figure",
    id: rows.length > 1 ? "cost-by-date" : "cost-bar",
    width,
    height: foot + (hasLikely ? 20 : 4),
    shapes: [
      ...rows.flatMap(({ total: { low, high } }, index) => barOf(x, low, high, top + index * rowHeight)),
      ...(hasLikely ? [line(`M${x(whole.likely)} ${foot - rowHeight + 2}V${foot + 2}`, { stroke: "ink" })] : []),
      ...(paid > 0 ? [line(`M${x(paid)} ${top - 6}V${foot - 2}`, { stroke: "accent", width: 3 })] : []),
    ],
    labels: [
      ...(paid > 0 ? [corner(words("paid", { amount: money(paid) }), x(paid), 14)] : []),
      ...rows.flatMap((_, index): Label[] => {
        const y = top + index * rowHeight + 16;
        return [
          { text: days[index] ?? "", x: 0, y, size, align: "start" },
          { text: ranges[index] ?? "", x: width, y, size, align: "end" },
        ];
      }),
      ...(hasLikely ? [corner(words("likely", { amount: money(whole.likely) }), x(whole.likely), foot + 16)] : []),
    ],
    alt: inARow([
      ...rows.map((row) => words("by", { day: page.voice.day(row.day), amount: amounts(row.total) })),
      ...(hasLikely ? [`${words("likely", { amount: money(whole.likely) })}.`] : []),
      ...(paid > 0 ? [`${words("paid", { amount: money(paid) })}.`] : []),
    ]),
    caption: [],
  };
}

/** The days that are shown, evenly chosen from all on which something is charged; the first and the last always. */
function daysShown(byDate: readonly Row[]): readonly Row[] {
  if (byDate.length <= mostDays) return byDate;
  const chosen = Array.from({ length: mostDays }, (_, i) => Math.round((i * (byDate.length - 1)) / (mostDays - 1)));
  return byDate.filter((_, i) => chosen.includes(i));
}

/** What is sure is filled, and what may come on top has a broken outline. */
function barOf(x: (minor: number) => number, low: number, high: number, y: number): Shape[] {
  const bar = (from: number, to: number) => box(x(from), y + 4, x(to), y + rowHeight - 4);
  return [
    ...(high > low
      ? [{ path: bar(low, high), fill: "none", stroke: "ink", width: 1.5, dashed: true } satisfies Shape]
      : []),
    ...(low > 0 ? [{ path: bar(0, low), fill: "pale", stroke: "ink", width: 1.5 } satisfies Shape] : []),
  ];
}

const widest = (labels: readonly string[]): number => Math.max(0, ...labels.map((text) => stringWidth(text))) * letter;
