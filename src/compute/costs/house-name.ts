import type { CostLine } from "../facts.js";
import { dispensedFor } from "./dispensed.js";
import { keyOf } from "./key.js";
import type { Item } from "./read-item.js";
import type { Countable } from "./slots.js";

/**
 * What the house itself calls the thing an item charges for: a visit whose kind the item is, a medicine of this plan, its
 * collar. A row that only goes with a visit ("sedation", at a bandage change) is something else, and has none.
 */
export function houseNameOf(item: Item, { medicines, collar }: Countable): CostLine["houseName"] {
  const { price } = item;
  const key = keyOf(price.item);
  if (price.visit !== null && key.replaceAll(" ", "-") === price.visit) return { of: "visit", name: price.visit };
  if (collar && key === `${collar} collar`) return { of: "collar", name: collar.replaceAll(" ", "-") };
  const called = price.per === "unit" ? dispensedFor(item, medicines)[0]?.called : null;
  return called ? { of: "medicine", name: called } : null;
}
