import type { Decimal } from "decimal.js";
import type { Span } from "../facts.js";
import { dispensed } from "./dispensed.js";
import { exact, roundHalfUp } from "./money.js";
import type { Item } from "./read-item.js";
import { type Countable, type End, type Slot, slotsOf } from "./slots.js";
import type { PriceAt } from "./time-band.js";

/** An item charged once: how many, how many of them cost something, and at what price for one. */
export type Charge = Slot & { item: Item; count: Decimal; charged: Decimal; unit: Span };

/** All times an item is charged. What a package holds is used up by the surest first. */
export function chargesOf(item: Item, counted: Countable, priceAt: PriceAt): Charge[] {
  const count = item.price.per === "unit" ? dispensed(item, counted.medicines).times(item.times) : exact(item.times);
  return slotsOf(item, counted).map((slot, index) => {
    const held = exact(item.included).minus(count.times(index)).clamp(0, count);
    return { ...slot, item, count, charged: count.minus(held), unit: priceAt(item.price, slot.visit) };
  });
}

/** What a charge comes to before discounts and taxes. */
export const gross = ({ charged, unit }: Charge, end: End): number => roundHalfUp(charged.times(unit[end]));
