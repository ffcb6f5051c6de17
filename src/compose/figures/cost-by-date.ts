import { differenceInCalendarDays, parseISO } from "date-fns";
import type { Day, Estimate, Span } from "#compute/facts.js";
import type { Figure, Label } from "#handout/handout.js";
import { datesShown } from "../blocks/cost-dates.js";
import { type Page, plainOn } from "../page.js";

const width = 500;
const left = 16;
const right = 372;
const top = 26;
const bottom = 148;

/** What it has come to by each day, the least and the most, as two flights of steps; null where all is paid on one day. */
export function costByDateOn(page: Page, { byDate, currency, total }: Estimate): Figure | null {
  const [first, last] = [byDate[0]?.day, byDate.at(-1)?.day];
  if (!first || !last || first === last || total.high === 0) return null;
  const after = (day: Day) => differenceInCalendarDays(parseISO(day), parseISO(first));
  const x = (day: Day) => left + (after(day) / after(last)) * (right - left);
  const y = (minor: number) => bottom - (minor / total.high) * (bottom - top);
  const steps = (end: keyof Span) =>
    byDate.map((one, i) => `${i === 0 ? `M${left}` : `H${x(one.day)}`}${i === 0 ? " " : "V"}${y(one.total[end])}`);
  const [most, least] = [steps("high").join(""), steps("low").join("")];
  const money = (minor: number) => page.voice.money(minor, currency);
  const words = (key: string, values: Record<string, string>) => plainOn(page, `handout:estimate.dates.${key}`, values);

  const highAt = y(total.high) + 5;
  // The two ends of a course that costs much the same either way are told one above the other.
  const lowAt = Math.max(y(total.low) + 5, highAt + 20);
  const end = (key: string, minor: number, at: number): Label => ({
    text: words(key, { amount: money(minor) }),
    x: right + 10,
    y: at,
    size: 14,
    align: "start",
  });
  return {
    kind: "figure",
    id: "cost-by-date",
    width,
    height: 178,
    shapes: [
      { path: `${most}V${bottom}H${left}Z`, fill: "pale" },
      { path: most, fill: "none", stroke: "ink", width: 2.5 },
      { path: least, fill: "none", stroke: "ink", width: 2, dashed: true },
      { path: `M${left} ${bottom}H${right}`, fill: "none", stroke: "ink", width: 1 },
    ],
    labels: [
      end("high", total.high, highAt),
      end("low", total.low, lowAt),
      ...apart(
        datesShown(byDate).map(
          ({ day }): Label => ({
            text: page.voice.monthDay(day),
            x: x(day),
            y: bottom + 20,
            size: 14,
            align: "center",
          }),
        ),
      ),
    ],
    alt: [
      `${words("caption", {})}.`,
      ...datesShown(byDate).map(({ day, total: { low, high } }) =>
        words("by", { day: page.voice.day(day), low: money(low), high: money(high) }),
      ),
    ].join(" "),
    caption: [{ kind: "text", text: words("caption", {}) }],
  };
}

/** About how wide a letter of a date is, and the room between two dates. */
const letter = 8;
const room = 14;

/** The dates that do not meet; the last is always told. */
function apart(dates: readonly Label[]): Label[] {
  const [last, ...before] = dates.toReversed();
  const told = last ? [last] : [];
  const meet = (a: Label, b: Label) => Math.abs(a.x - b.x) < ((a.text.length + b.text.length) / 2) * letter + room;
  for (const date of before.toReversed()) if (!told.some((other) => meet(date, other))) told.push(date);
  return told;
}
