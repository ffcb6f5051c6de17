import type { Decimal } from "decimal.js";
import type { Day } from "../facts.js";
import { type Charge, gross } from "./charges.js";
import type { Off } from "./discounts.js";
import { exact, roundHalfUp, shareOf, toMinor } from "./money.js";
import type { End } from "./slots.js";
import type { Tax } from "./taxes.js";

/** What is paid at one time. off and tax: what each discount takes off, and how much there is of each tax. */
export type Bill = {
  day: Day;
  visit: string | null;
  subtotal: number;
  off: Map<Off, number>;
  tax: Map<Tax, number>;
  total: number;
};

/** How an estimate is reckoned, besides its prices. */
export type Terms = { discounts: readonly Off[]; digits: number };

/**
 * The bills that charges come to, one a visit (or a day, for what is at none), the earliest first; ./costs.ts says in which
 * order each is reckoned. A discount that is an amount of money comes off the first bills until it is used up.
 */
export function billsOf(charges: readonly Charge[], end: End, { discounts, digits }: Terms): Bill[] {
  const left = new Map(discounts.map(({ off, on }) => [on, "amount" in off ? toMinor(off.amount, digits) : 0]));
  const takeOff = (discount: Off | undefined, amount: number): number => {
    if (!discount) return 0;
    if ("percent" in discount.off) return shareOf(amount, discount.off.percent);
    const taken = Math.min(left.get(discount.on) ?? 0, amount);
    left.set(discount.on, (left.get(discount.on) ?? 0) - taken);
    return taken;
  };

  const billOf = (bill: readonly Charge[]): Bill => {
    const off = new Map<Off, number>();
    const reduced = (discount: Off | undefined, amount: number): number => {
      const taken = takeOff(discount, amount);
      if (discount) add(off, discount, taken);
      return amount - taken;
    };
    const lines = bill.map((charge) => {
      const amount = gross(charge, end);
      return {
        charge,
        amount,
        net: reduced(
          discounts.find(({ on }) => on === charge.item.price),
          amount,
        ),
      };
    });
    const before = total(lines.map(({ net }) => net));
    const whole = discounts.find(({ on }) => on === null);
    const after = reduced(whole, before);
    const tax = new Map<Tax, number>();
    for (const { charge, net } of lines)
      for (const [one, amount] of taxesOn(charge.item.price.taxes, net, keptOf(whole, before, after)))
        add(tax, one, amount);
    const onTop = [...tax].filter(([{ inclusive }]) => !inclusive).map(([, amount]) => amount);
    return {
      day: bill[0]?.day ?? "",
      visit: bill[0]?.visit?.id ?? null,
      subtotal: total(lines.map(({ amount }) => amount)),
      off,
      tax,
      total: after + total(onTop),
    };
  };

  return together(charges.toSorted(byName)).map(billOf);
}

/** What a discount on the whole leaves: so many parts of so many, the same of every line; a percent leaves its exact share. */
type Kept = { parts: Decimal; of: Decimal };

const keptOf = (whole: Off | undefined, before: number, after: number): Kept => {
  if (whole && "percent" in whole.off) return { parts: exact(100).minus(whole.off.percent), of: exact(100) };
  return before === 0 ? { parts: exact(0), of: exact(1) } : { parts: exact(after), of: exact(before) };
};

/** Each tax of a line on what the discounts leave of it, worked out from the price without the taxes it holds. */
function taxesOn(taxes: readonly Tax[], net: number, kept: Kept): [Tax, number][] {
  const whole = taxes.filter(({ inclusive }) => inclusive).reduce((all, { percent }) => all.plus(percent), exact(100));
  // One division, and it comes last: a half must not be missed for a third that was rounded before.
  const taxOf = ({ percent }: Tax) => exact(net).times(kept.parts).times(percent).div(kept.of.times(whole));
  return taxes.map((tax) => [tax, roundHalfUp(taxOf(tax))]);
}

/** One order however the lines are written: what an amount takes off two of one item must not depend on it. */
const byName = ({ item: a }: Charge, { item: b }: Charge) =>
  a.price.item.localeCompare(b.price.item, "en") || String(a.when).localeCompare(String(b.when), "en");

/** Charges by the bill they are on. */
function together(charges: readonly Charge[]): Charge[][] {
  const bills = new Map<string, Charge[]>();
  for (const charge of charges) {
    const key = `${charge.day} ${charge.visit?.id ?? ""}`;
    bills.set(key, [...(bills.get(key) ?? []), charge]);
  }
  return [...bills].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, bill]) => bill);
}

const total = (amounts: readonly number[]): number => amounts.reduce((all, amount) => all + amount, 0);
const add = <K>(sums: Map<K, number>, key: K, amount: number) => sums.set(key, (sums.get(key) ?? 0) + amount);
