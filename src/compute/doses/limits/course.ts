import { type Problem, problem } from "#problems/problem.js";
import type { Regimen } from "#tables/medicines.js";
import type { Dosing } from "./dosing.js";

/** The course is no longer than the rule says, in days and in doses; a dose at the clinic may be one of them. */
export function courseOutside(regimen: Regimen, { asked, step, days, clinicDoses, tapering }: Dosing): Problem[] {
  if (tapering) return [];
  const { source } = regimen;
  const at = asked.at(...step.path, "for");
  const medicine = asked.planned.name;
  const problems: Problem[] = [];
  const most = regimen.days?.most ?? null;
  if (most !== null && days > most)
    problems.push(problem("days-over-limit", at, { medicine, days, limit: most, source }));
  const doses = step.count + (regimen.doses?.clinicCounts ? clinicDoses : 0);
  if (regimen.doses && doses > regimen.doses.most)
    problems.push(problem("doses-over-limit", at, { medicine, doses, limit: regimen.doses.most, source }));
  return problems;
}

/** A course shorter than the rule says is worth a look: it may go on at the next visit. One far shorter is asked about. */
export function courseShort(
  { days: limits, source }: Regimen,
  { asked, step, days, tapering, last }: Dosing,
): Problem[] {
  const least = limits?.least ?? null;
  if (least === null || days >= least || tapering || !last) return [];
  const values = { medicine: asked.planned.name, days, limit: least, source };
  const at = asked.at(...step.path, "for");
  return [days * 2 < least ? problem("days-far-under-limit", at, values) : problem("days-under-limit", at, values)];
}
