import { type Problem, problem } from "#problems/problem.js";
import type { Regimen } from "#tables/medicines.js";
import type { Dosing } from "./dosing.js";

/** Doses follow each other no faster than the rule says, and no slower unless they taper or are given only as needed. */
export function intervalOutside({ every, source }: Regimen, { asked, step, tapering, asNeeded }: Dosing): Problem[] {
  if (!every) return [];
  const { hours } = step.every;
  const at = asked.at(...step.path, "every");
  const values = { medicine: asked.planned.name, every: hours, source };
  if (hours < every.least) return [problem("doses-too-often", at, { ...values, limit: every.least })];
  if (hours <= every.most || tapering || asNeeded) return [];
  return [problem("doses-too-seldom", at, { ...values, limit: every.most })];
}
