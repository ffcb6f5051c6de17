import type { Plan } from "#plan/plan.js";
import { placeOf } from "#problems/place.js";
import { type Problem, problem } from "#problems/problem.js";
import type { CollarRules } from "#tables/collars.js";
import type { Asked } from "./choose.js";
import { cm } from "./length.js";

/** Measures that are more often a slip of the pen, or a wrong unit, than an animal. */
export function checkMeasures(plan: Plan, asked: Asked, rules: CollarRules): Problem[] {
  const { species } = plan.patient;
  const usual = rules.plausible[species];
  const strange = (["neck", "length"] as const).flatMap((measure): Problem[] => {
    const range = usual[measure];
    const given = asked[measure];
    if (cm(given).gte(cm(range.from)) && cm(given).lte(cm(range.to))) return [];
    const values = { measure, given: text(given), species, from: text(range.from), to: text(range.to) };
    return [problem("collar-measure-implausible", placeOf(plan.places, "collar", measure), values)];
  });
  // A collar goes on over the muzzle and must not come off over it: the neck is the wider of the two.
  if (asked.muzzle && cm(asked.muzzle).gte(cm(asked.neck))) {
    const values = { muzzle: text(asked.muzzle), neck: text(asked.neck) };
    strange.push(problem("collar-muzzle-wider", placeOf(plan.places, "collar", "muzzle"), values));
  }
  return strange;
}

const text = ({ value, unit }: { value: string; unit: string }) => `${value} ${unit}`;
