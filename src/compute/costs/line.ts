import type { CostLine, Counts, Span } from "../facts.js";
import { type Charge, gross } from "./charges.js";
import { dispensedFor } from "./dispensed.js";
import { houseNameOf } from "./house-name.js";
import { exact } from "./money.js";
import type { Item } from "./read-item.js";
import { type Countable, decisionOf, type End } from "./slots.js";
import { spanOf } from "./span.js";

/** One line of the estimate: all the times an item is charged, together. */
export function lineOf(item: Item, charges: readonly Charge[], counted: Countable): CostLine {
  const taken = (end: End) => charges.filter((charge) => charge.in[end]);
  const countAt = (end: End) =>
    taken(end)
      .reduce((all, { count }) => all.plus(count), exact(0))
      .toNumber();
  const quantity: Counts = { fewest: countAt("low"), likely: countAt("likely"), most: countAt("high") };
  const units = charges.map(({ unit }) => unit);
  return {
    item: item.price.item,
    name: item.price.name,
    houseName: houseNameOf(item, counted),
    quantity,
    of: item.price.per === "unit" ? (dispensedFor(item, counted.medicines)[0]?.dispense.unit ?? null) : null,
    included: item.included,
    unit: widest(units.length > 0 ? units : [item.price.unit]),
    total: spanOf((end) => taken(end).reduce((all, charge) => all + gross(charge, end), 0)),
    when: item.when,
    dependsOn: decisionOf(item, counted.course),
    from: item.at,
  };
}

/** From the cheapest to the dearest; the likely one is that of the surest. */
const widest = (units: readonly Span[]): Span => ({
  low: Math.min(...units.map(({ low }) => low)),
  likely: units[0]?.likely ?? 0,
  high: Math.max(...units.map(({ high }) => high)),
});
