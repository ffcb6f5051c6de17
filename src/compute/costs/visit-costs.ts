import type { Visit, VisitCost } from "../facts.js";
import { billsOf, type Terms } from "./bills.js";
import type { Charge } from "./charges.js";
import { dayOf, type End } from "./slots.js";
import { spanOf } from "./span.js";

/**
 * What each visit costs if it happens: its bill where every visit happens that may. What is only "if needed" counts in high
 * only, and what is charged by the day is on no visit's bill.
 */
export function visitCosts(charges: readonly Charge[], visits: readonly Visit[], terms: Terms): VisitCost[] {
  const costsOf = (charges: readonly Charge[]) => {
    const happens = (end: End) => (charge: Charge) => charge.item.when !== "needed" || end === "high";
    const costsAt = (end: End) =>
      new Map(billsOf(charges.filter(happens(end)), end, terms).map(({ visit, total }) => [visit, total]));
    const costs = { low: costsAt("low"), likely: costsAt("likely"), high: costsAt("high") };
    return ({ id }: Visit) => spanOf((end) => costs[end].get(id) ?? 0);
  };
  const amount = costsOf(charges);
  const own = costsOf(charges.filter(({ item }) => item.when !== "needed" || item.price.per !== "once"));
  return visits.map((visit) => ({
    visit: visit.id,
    day: dayOf(visit),
    certainty: visit.certainty,
    dependsOn: visit.dependsOn,
    amount: amount(visit),
    own: own(visit),
  }));
}
