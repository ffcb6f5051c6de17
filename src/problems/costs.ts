import { ask, note, stop } from "./kind.js";

type Money = { minor: number; currency: string };

/** What is written in the estimate and in the clinic's price list. */
export const costKinds = {
  "currency-unknown": stop<{ given: string; near: readonly string[] }>(),
  "price-unreadable": stop<{ given: string }>(),
  "price-negative": stop<{ given: string }>(),
  "price-too-large": stop<{ given: string; digits: number }>(),
  "percent-unreadable": stop<{ given: string }>(),
  "percent-too-large": stop<{ given: string }>(),
  "currency-mismatch": stop<{ given: string; currency: string }>(),
  "price-too-fine": stop<{ given: string; currency: string; digits: number }>(),
  "price-range-backwards": stop<{ low: string; high: string }>(),
  "price-likely-outside": stop<{ likely: string; low: string; high: string }>(),
  "weight-band-twice": stop<{ given: string }>(),
  "time-band-twice": stop<{ when: string }>(),
  "time-band-without-visit": stop<{ item: string }>(),
  "package-not-firm": stop<{ item: string }>(),
  "package-in-package": stop<{ item: string }>(),
  "price-twice": stop<{ item: string }>(),
  "tax-twice": stop<{ tax: string }>(),
  "tax-unknown": stop<{ item: string; tax: string; near: readonly string[] }>(),
  "valid-too-long": stop<{ given: string; most: number }>(),
  "item-unknown": stop<{ given: string; near: readonly string[] }>(),
  "item-times-wrong": stop<{ given: string; least: number; most: number }>(),
  "item-twice": ask<{ item: string }>(),
  "discount-item-missing": stop<{ given: string; near: readonly string[] }>(),
  "discount-twice": stop<{ given: string }>(),
  "discount-over-cost": ask<{ off: Money; cost: Money }>(),
  "unit-not-dispensed": stop<{ item: string; medicines: readonly string[] }>(),
  "visit-not-in-course": note<{ item: string; visit: string; near: readonly string[] }>(),
  "decision-not-named": note<{ item: string }>(),
  "amount-too-large": stop<{ most: Money }>(),
  "paid-over-estimate": ask<{ paid: Money; high: Money }>(),
  "estimate-missing": stop<Record<never, never>>(),
  "deposit-over-estimate": ask<{ deposit: Money; high: Money }>(),
};
