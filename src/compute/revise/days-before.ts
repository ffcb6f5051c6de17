import { Decimal } from "decimal.js";
import type { Plan, VisitEntry } from "#plan/plan.js";
import { toMinor } from "../costs/money.js";
import { rangeOf } from "../costs/price-range.js";
import { spanOf } from "../costs/span.js";
import type { Span } from "../facts.js";

/** One day as money knows it, in minor units: what was charged, and what was expected of that which was not. */
type DayMoney = { day: string; charged: number | null; expected: Span | null };
type Written = NonNullable<Plan["estimate"]>["before"];

/** What the days until now come to: those of the plan, the day of the paper in force, and this visit's. */
export type DaysBefore = { known: Written; today: Span; discharged: string; expected: Span | null; digits: number };

/**
 * The days before the next paper, each once, with what was told of them now. What a day was charged as a whole takes the place
 * of all that was known of it.
 */
export function daysBefore({ known, today, discharged, expected, digits }: DaysBefore, entry: VisitEntry): DayMoney[] {
  const charged = entry.charged === undefined ? null : toMinor(entry.charged, digits);
  const all: DayMoney[] = [
    ...known.map(
      (one): DayMoney => ({
        day: one.day,
        charged: one.charged === undefined ? null : toMinor(one.charged, digits),
        expected: one.expected ? rangeOf(one.expected, digits) : null,
      }),
    ),
    { day: discharged.slice(0, 10), charged: null, expected: today },
    { day: entry.at.slice(0, 10), charged, expected: charged === null ? expected : null },
  ];
  const days = [...new Set(all.map(({ day }) => day))].toSorted();
  return days
    .map((day) => {
      const told = entry["charged on"][day];
      const own = all.filter((one) => one.day === day);
      return told === undefined ? together(day, own) : { day, charged: toMinor(told, digits), expected: null };
    })
    .filter((one) => one.charged !== null || one.expected !== null);
}

/** Nothing was charged, and nothing expected: such a day is none to tell of. */
function together(day: string, own: readonly DayMoney[]): DayMoney {
  const charged = own.flatMap((one) => one.charged ?? []);
  const expected = own.flatMap((one) => (one.expected && one.expected.high > 0 ? one.expected : []));
  return {
    day,
    charged: charged.length > 0 ? sum(charged) : null,
    expected: expected.length > 0 ? spanOf((end) => sum(expected.map((range) => range[end]))) : null,
  };
}

/** As a plan writes it: { day: 2026-03-05, expected: "48.00-153.00, likely 48.00" } */
export function writtenDay({ day, charged, expected }: DayMoney, digits: number): Record<string, string> {
  const money = (minor: number) => new Decimal(minor).div(new Decimal(10).pow(digits)).toFixed(digits);
  const range = ({ low, likely, high }: Span) =>
    low === high ? money(low) : `${money(low)}-${money(high)}, likely ${money(likely)}`;
  return {
    day,
    ...(charged === null ? {} : { charged: money(charged) }),
    ...(expected === null ? {} : { expected: range(expected) }),
  };
}

const sum = (amounts: readonly number[]): number => amounts.reduce((all, amount) => all + amount, 0);
