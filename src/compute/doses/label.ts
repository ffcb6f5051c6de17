import type { Plan } from "#plan/plan.js";
import { placeOf } from "#problems/place.js";
import { type Problem, problem } from "#problems/problem.js";
import type { LabelRule } from "#tables/medicines.js";

/**
 * What the law of the clinic's country wants on the label of a medicine, and the plan does not say. unknown: medicines of
 * which the table cannot tell whether their name is that of what is in them.
 */
export function labelLacks(plan: Plan, rules: readonly LabelRule[], unknown: readonly string[]): Problem[] {
  const { medicines, places, clinician, owner, clinic } = plan;
  const rule = rules.find(({ country }) => country === clinic.country);
  if (!rule || medicines.length === 0) return [];
  const undated = medicines.filter(({ expires }) => expires === undefined);
  const lacking = {
    clinician: clinician === undefined ? medicines : [],
    ingredient: medicines.filter(({ name }) => unknown.includes(name)),
    "owner-address": owner.address === undefined ? medicines : [],
    expiry: undated,
  };
  const at = {
    clinician: placeOf(places),
    ingredient: placeOf(
      places,
      "medicines",
      medicines.findIndex(({ name }) => unknown.includes(name)),
    ),
    "owner-address": placeOf(places, "owner"),
    expiry: placeOf(
      places,
      "medicines",
      medicines.findIndex(({ expires }) => expires === undefined),
    ),
  };
  return rule.needs
    .filter((need) => lacking[need].length > 0)
    .map((need) => {
      const named = lacking[need].map(({ name }) => name);
      return problem("label-lacks", at[need], { medicines: named, context: need, source: rule.source });
    });
}
