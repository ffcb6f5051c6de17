import type { Plan } from "#plan/plan.js";
import { nearest } from "#problems/near.js";
import { placeOf } from "#problems/place.js";
import { type Problem, problem } from "#problems/problem.js";
import type { Told } from "../facts.js";
import { toldIn } from "../told.js";
import { keyOf } from "./key.js";
import type { ShareOrAmount } from "./money.js";
import type { Price } from "./price-list.js";
import type { Item } from "./read-item.js";

/** What comes off one row of the price list, or off the whole. */
export type Off = { off: ShareOrAmount; on: Price | null; name: Told | null };

/**
 * The discounts of an estimate, each on an item it has; one thing has one discount, so that no order has to be chosen.
 * Problems: "discount-item-missing", "discount-twice".
 */
export function discountsOf(
  { clinic, places, estimate }: Plan,
  items: readonly Item[],
): { discounts: Off[]; problems: Problem[] } {
  const discounts: Off[] = [];
  const problems: Problem[] = [];
  const prices = items.map(({ price }) => price);
  for (const [index, { off, on, name }] of (estimate?.discounts ?? []).entries()) {
    const at = (field: string) => placeOf(places, "estimate", "discounts", index, field);
    const price = on === undefined ? null : prices.find(({ item }) => keyOf(item) === keyOf(on));
    if (on !== undefined && !price) {
      const near = nearest(on, [...new Set(prices.map(({ item }) => item))]);
      problems.push(problem("discount-item-missing", at("on"), { given: on, near }));
    } else if (discounts.some((other) => other.on === (price ?? null)))
      problems.push(
        problem("discount-twice", at("off"), { given: "percent" in off ? `${off.percent} %` : off.amount }),
      );
    else discounts.push({ off, on: price ?? null, name: name === undefined ? null : toldIn(name, clinic.language) });
  }
  return { discounts, problems };
}
