import { nearest } from "#problems/near.js";
import { type Problem, problem } from "#problems/problem.js";
import type { Medicine } from "../facts.js";
import { dispensedFor } from "./dispensed.js";
import type { Item } from "./read-item.js";
import type { Countable } from "./slots.js";

/** What an item asks for that the course and the medicines do not have, and what is asked for twice. */
export function checkItems(items: readonly Item[], counted: Countable): Problem[] {
  return items.flatMap((item, index) => [
    ...checkVisit(item, counted),
    ...checkUnits(item, counted),
    ...(items.slice(0, index).some(({ price, when }) => price === item.price && when === item.when)
      ? [problem("item-twice", item.at, { item: item.price.item })]
      : []),
  ]);
}

function checkVisit({ price: { item, per, visit }, when, at }: Item, { course }: Countable): Problem[] {
  if (visit === null) return when === "done" ? [problem("decision-not-named", at, { item })] : [];
  const kinds = course.purposes.map(({ kind }) => kind);
  if ((per !== "visit" && when !== "done") || kinds.includes(visit)) return [];
  return [problem("visit-not-in-course", at, { item, visit, near: nearest(visit, kinds) })];
}

function checkUnits(item: Item, { medicines }: Countable): Problem[] {
  const { price, at } = item;
  if (price.per !== "unit" || dispensedFor(item, medicines).length > 0) return [];
  return [problem("unit-not-dispensed", at, { item: price.item, medicines: medicines.map(known) })];
}

const known = ({ name, strength }: Medicine): string =>
  strength ? `${name} ${strength.value} ${strength.unit}` : name;
