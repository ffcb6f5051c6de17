import type { Plan } from "#plan/plan.js";
import { nearest } from "#problems/near.js";
import { placeOf } from "#problems/place.js";
import { type Outcome, problem, stops } from "#problems/problem.js";
import type { CashRounding } from "#tables/cash.js";
import type { Course, Estimate, Medicine } from "../facts.js";
import { checkEstimate } from "./check-estimate.js";
import { checkItems } from "./check-items.js";
import { checkMoney } from "./check-money.js";
import { checkTerms } from "./check-terms.js";
import { discountsOf } from "./discounts.js";
import { estimateOf } from "./estimate.js";
import { minorDigits } from "./money.js";
import { openPackages } from "./packages.js";
import { readPriceList } from "./price-list.js";
import { readItem } from "./read-item.js";
import { pricesByTime } from "./time-band.js";

/**
 * What the course is likely to cost, in whole minor units; null where the plan has no estimate.
 *
 * low is the shortest course at the lowest prices, likely the likely one, high the longest with all that may be needed. Each
 * visit has a bill of its own, and so has each other day on which something is charged; the total is the sum of the bills.
 *
 * The order of operations on a bill, each result in whole units, a half rounded up:
 * 1. price: that of the weight band, and what the time band adds;
 * 2. line: quantity, less what a package holds, x price;
 * 3. what comes off the line;
 * 4. what comes off the whole, from the sum of the lines;
 * 5. each tax of each line, from what 3 and 4 leave of it: a share of a price before tax, the price's own taxes taken out;
 * 6. total: the lines less 3 and 4, and the taxes that prices do not already hold.
 * Then, once for all bills: what was paid comes off; and cash is rounded last, where the country rounds it.
 * Discounts before tax: California Department of Tax and Fee Administration, Publication 113 (a discount the seller bears).
 */
export function computeCosts(
  plan: Plan,
  course: Course,
  medicines: Medicine[],
  cash: readonly CashRounding[],
): Outcome<Estimate | null> {
  if (!plan.estimate) return { value: null, problems: [] };
  const { clinic, places } = plan;
  const digits = minorDigits(clinic.currency);
  if (digits === null) {
    const near = nearest(clinic.currency, Intl.supportedValuesOf("currency"));
    const at = placeOf(places, "clinic", "currency");
    return { value: null, problems: [problem("currency-unknown", at, { given: clinic.currency, near })] };
  }

  const counted = { discharged: plan.discharged, course, medicines, collar: plan.collar?.type ?? null };
  const { list, problems } = readPriceList(plan, digits);
  const read = plan.estimate.items.map((text, index) =>
    readItem(text, list.prices, placeOf(places, "estimate", "items", index)),
  );
  const listed = read.flatMap(({ value }) => value ?? []);
  const opened = openPackages(listed, list.prices);
  const off = discountsOf(plan, opened.items);
  problems.push(
    ...checkMoney(plan, digits),
    ...checkTerms(plan),
    ...read.flatMap((one) => one.problems),
    ...checkItems(listed, counted),
    ...opened.problems,
    ...off.problems,
  );
  if (stops(problems)) return { value: null, problems };

  const estimate = estimateOf(plan, counted, {
    items: opened.items,
    discounts: off.discounts,
    taxes: list.taxes,
    priceAt: pricesByTime(plan, digits),
    digits,
    cash,
  });
  problems.push(...checkEstimate(estimate, plan, off.discounts, digits));
  return { value: stops(problems) ? null : estimate, problems };
}
