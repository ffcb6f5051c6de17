import type { Edit, Plan, VisitEntry } from "#plan/plan.js";
import { placeOf } from "#problems/place.js";
import { type Outcome, problem, stops } from "#problems/problem.js";
import { keyOf } from "../costs/key.js";
import { minorDigits, numberOf } from "../costs/money.js";
import type { Estimate, Facts, Visit } from "../facts.js";
import { daysBefore, writtenDay } from "./days-before.js";

/** visit: the one of the course that this was, or null where the estimate knows of none; over: no visit is to come. */
type Turn = { visit: Visit | null; over: boolean };

/**
 * The money from a visit on: what each day until now came to, what was paid, and the items that are still to come. What the
 * clinic has not said it charged stays the range it was expected in: no sum is made up.
 * Problems: "revise-charge-unknown", "revise-charge-day-unknown", "revise-estimate-used".
 */
export function moneyEdits(plan: Plan, facts: Facts, entry: VisitEntry, { visit, over }: Turn): Outcome<Edit[]> {
  const { estimate, clinic, discharged } = plan;
  const known = facts.estimate;
  if (!estimate || !known) return { value: [], problems: [] };
  const digits = minorDigits(clinic.currency) ?? 2;
  const expected = known.visits.find((one) => one.visit === visit?.id)?.own ?? null;
  const money = { known: estimate.before, today: known.today, discharged, expected, digits };
  const days = daysBefore(money, entry);

  const at = placeOf(plan.places, "estimate");
  const strange = Object.keys(entry["charged on"]).filter((day) => !daysOf(plan, entry).includes(day));
  const used = usedItems(plan, known);
  const problems = [
    ...(entry.charged === undefined && expected === null ? [problem("revise-charge-unknown", at, {})] : []),
    ...strange.map((given) => problem("revise-charge-day-unknown", at, { given, known: daysOf(plan, entry) })),
    ...(used.length > 0 ? [problem("revise-estimate-used", at, { items: used })] : []),
  ];
  const kept = estimate.items.map((_, i) => !over && isToCome(plan, known, entry, i));
  const keptRows = known.lines.flatMap(({ item }, i) => (kept[i] ? keyOf(item) : []));
  const paid = numberOf(estimate.paid).plus(numberOf(entry.paid ?? "0"));
  const edits: Edit[] = [
    { path: ["estimate", "before"], value: days.map((day) => writtenDay(day, digits)) },
    { path: ["estimate", "paid"], value: paid.toFixed(digits) },
    { path: ["estimate", "items"], value: estimate.items.filter((_, i) => kept[i]) },
    // What comes off an item goes with it. From the last to the first, so that none moves before its turn.
    ...estimate.discounts
      .flatMap(({ on }, i) => (on === undefined || keptRows.includes(keyOf(on)) ? [] : i))
      .toReversed()
      .map((i): Edit => ({ path: ["estimate", "discounts", i] })),
  ];
  return { value: stops(problems) ? null : edits, problems };
}

/** The days on which something may have been charged. */
const daysOf = ({ estimate, discharged }: Plan, { at }: VisitEntry): string[] =>
  [
    ...new Set([...(estimate?.before ?? []).map(({ day }) => day), discharged.slice(0, 10), at.slice(0, 10)]),
  ].toSorted();

/** What is charged once has been charged by now, unless it waits for a visit or a decision. */
function isToCome({ clinic }: Plan, known: Estimate, { decided }: VisitEntry, item: number): boolean {
  const line = known.lines[item];
  const row = clinic.prices.find((one) => keyOf(one.item) === keyOf(line?.item ?? ""));
  if (decided === "close" && row?.visit === "closure") return false;
  return line?.when != null || row?.per === "visit" || row?.per === "day" || row?.visit !== undefined;
}

/** Packages and amounts that come off: they may be used up in part, and nothing says how far. */
const usedItems = ({ clinic, estimate }: Plan, { lines }: Estimate): string[] => [
  ...lines.flatMap(({ item }) =>
    clinic.prices.some((row) => keyOf(row.item) === keyOf(item) && row.includes.length > 0) ? item : [],
  ),
  ...(estimate?.discounts ?? []).flatMap(({ off, on }) => ("amount" in off ? (on ?? off.amount) : [])),
];
