import type { Plan } from "#plan/plan.js";
import { placeOf } from "#problems/place.js";
import type { CashRounding } from "#tables/cash.js";
import type { Estimate, Span } from "../facts.js";
import { beforeOf } from "./before.js";
import { type Bill, billsOf, type Terms } from "./bills.js";
import { branchesOf } from "./branches.js";
import { inCash } from "./cash.js";
import { chargesOf } from "./charges.js";
import { lineOf } from "./line.js";
import { partOf, toMinor } from "./money.js";
import type { Item } from "./read-item.js";
import type { Countable, End } from "./slots.js";
import { mapSpan, spanOf } from "./span.js";
import type { Tax } from "./taxes.js";
import { termsOf } from "./terms.js";
import type { PriceAt } from "./time-band.js";
import { visitCosts } from "./visit-costs.js";

/** What an estimate is worked out from, besides the plan and what is counted. */
export type Basis = Terms & {
  items: readonly Item[];
  taxes: readonly Tax[];
  priceAt: PriceAt;
  cash: readonly CashRounding[];
};

/** The bills of the shortest, the likely and the longest course, added up; ./costs.ts says in which order. */
export function estimateOf(plan: Plan, counted: Countable, basis: Basis): Estimate {
  const { clinic, places, discharged, estimate } = plan;
  const { items, taxes, discounts, digits } = basis;
  const perItem = items.map((item) => ({ item, charges: chargesOf(item, counted, basis.priceAt) }));
  const charges = perItem.flatMap((one) => one.charges);
  const billsAt = (end: End): Bill[] =>
    billsOf(
      charges.filter((charge) => charge.in[end]),
      end,
      basis,
    );
  const bills = { low: billsAt("low"), likely: billsAt("likely"), high: billsAt("high") };
  const summed = (amount: (bill: Bill) => number): Span =>
    spanOf((end) => bills[end].reduce((all, bill) => all + amount(bill), 0));

  const total = summed((bill) => bill.total);
  const today = discharged.slice(0, 10);
  const until = (day: string) => summed((bill) => (bill.day <= day ? bill.total : 0));
  const paid = toMinor(estimate?.paid ?? "0", digits);
  const before = beforeOf(estimate?.before ?? [], digits);
  const withBefore = (span: Span) => spanOf((end) => before.total[end] + span[end]);
  const whole = withBefore(total);
  const balance = mapSpan(whole, (amount) => Math.max(0, amount - paid));
  const deposit = estimate?.deposit ?? clinic.estimate?.deposit;
  const asked = deposit && partOf(whole.likely, deposit, digits);
  const borne = taxes.filter((tax) => items.some(({ price }) => price.taxes.includes(tax)));
  return {
    called: clinic.estimate?.called ?? "estimate",
    currency: clinic.currency,
    lines: perItem.map((one) => lineOf(one.item, one.charges, counted)),
    subtotal: summed((bill) => bill.subtotal),
    discounts: discounts.map((discount) => ({
      name: discount.name,
      on: discount.on?.name ?? null,
      percent: "percent" in discount.off ? discount.off.percent : null,
      amount: summed((bill) => bill.off.get(discount) ?? 0),
    })),
    taxes: borne.map((tax) => ({ ...tax, amount: summed((bill) => bill.tax.get(tax) ?? 0) })),
    total,
    today: until(today),
    visits: visitCosts(charges, counted.course.visits, basis),
    byDate: [...new Set(bills.high.map(({ day }) => day))].map((day) => ({ day, total: withBefore(until(day)) })),
    branches: branchesOf(charges, basis).map(({ decision, without, with: having }) => ({
      decision,
      without: withBefore(without),
      with: withBefore(having),
    })),
    before,
    whole,
    paid,
    balance,
    credit: Math.max(0, paid - whole.low),
    deposit: asked === undefined ? null : { asked, due: Math.max(0, asked - paid) },
    cash: inCash(basis.cash, clinic, { total: whole, balance }),
    ...termsOf(clinic, discharged, whole.high, digits),
    from: placeOf(places, "estimate"),
  };
}
