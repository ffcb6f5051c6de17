import type { Plan } from "#plan/plan.js";
import { placeOf } from "#problems/place.js";
import { type Problem, problem } from "#problems/problem.js";
import { daysValid } from "./terms.js";

/** An estimate that holds for longer than this is a slip of the pen. */
const mostDays = 366;

/** What the clinic says of all its estimates. Problem: "valid-too-long". */
export function checkTerms({ clinic, places }: Plan): Problem[] {
  const valid = clinic.estimate?.valid;
  if (!valid || daysValid(valid).lte(mostDays)) return [];
  const at = placeOf(places, "clinic", "estimate", "valid");
  return [problem("valid-too-long", at, { given: `${valid.value} ${valid.unit}`, most: mostDays })];
}
