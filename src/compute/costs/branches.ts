import type { Branch, Span } from "../facts.js";
import { billsOf, type Terms } from "./bills.js";
import type { Charge } from "./charges.js";
import type { Item } from "./read-item.js";
import type { End } from "./slots.js";
import { spanOf } from "./span.js";

/**
 * The whole cost with and without each thing that is only a maybe: each decision of the course, and all that is only "if
 * needed". If it happens, each of its items is charged once at least, likely every time it may be.
 */
export function branchesOf(charges: readonly Charge[], terms: Terms): Branch[] {
  const waiting = charges.filter((charge) => charge.in.high && (charge.decision !== null || charge.item.when !== null));
  const decisions = [...new Set(waiting.map(({ decision }) => decision))];
  return decisions.map((decision) => {
    const its = new Set(waiting.filter((charge) => charge.decision === decision));
    const least = firstOfEach(its);
    const added = (charge: Charge, end: End): boolean => {
      if (!its.has(charge) || (decision !== null && charge.item.when === "needed")) return false;
      return end !== "low" || least.has(charge);
    };
    const cost = (taken: (charge: Charge, end: End) => boolean): Span =>
      spanOf((end) =>
        costOf(
          charges.filter((charge) => taken(charge, end)),
          end,
          terms,
        ),
      );
    return {
      decision,
      without: cost((charge, end) => charge.in[end] && !its.has(charge)),
      with: cost((charge, end) => charge.in[end] || added(charge, end)),
    };
  });
}

const costOf = (charges: readonly Charge[], end: End, terms: Terms): number =>
  billsOf(charges, end, terms).reduce((all, { total }) => all + total, 0);

function firstOfEach(charges: ReadonlySet<Charge>): Set<Charge> {
  const first = new Map<Item, Charge>();
  for (const charge of charges) if (!first.has(charge.item)) first.set(charge.item, charge);
  return new Set(first.values());
}
