import { placeOf } from "#problems/place.js";
import { type Problem, problem } from "#problems/problem.js";
import type { Plan } from "../plan.js";

/** "2019-05" sorts before every day of that month, so a birth in the month of discharge passes. */
export function checkBirth({ patient: { born }, discharged, places }: Plan): Problem[] {
  if (born === undefined || born <= discharged.slice(0, born.length)) return [];
  return [problem("born-after-discharge", placeOf(places, "patient", "born"), { born })];
}
