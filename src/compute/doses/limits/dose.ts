import { type Problem, problem } from "#problems/problem.js";
import type { Regimen } from "#tables/medicines.js";
import { Exact, pounds, told } from "../exact.js";
import { roundingPercent } from "../give.js";
import { toStep } from "../round.js";
import { type Dosing, ruleText } from "./dosing.js";

/** Printed per-pound and per-kilogram figures are rounded: 2 mg/kg stands as 0.9 and as 0.91 mg/lb (21 CFR 520.1084, 520.2075). */
const printed = new Exact("1.012");
const rounding = new Exact(roundingPercent).div(100);

type Bounds = { least: Exact | null; most: Exact | null };

/** Milligrams, or units, of one dose, at least and at most, for this animal and this interval. */
export function boundsOf({ dose, ceiling }: Regimen, kg: Exact, hours: number): Bounds {
  const perAnimal = dose.unit.endsWith("/kg") ? kg : dose.unit === "mg/lb" ? pounds(kg) : new Exact(1);
  const perDose = dose.per === "day" ? perAnimal.times(hours).div(24) : perAnimal;
  const bound = (value: string | null | undefined) => (value ? perDose.times(value) : null);
  return { least: bound(dose.least), most: bound(dose.most ?? ceiling?.most) };
}

/**
 * What was ordered lies in the bounds, and so does what is given once they too are rounded to what can be given, as long as
 * the rounding is small. Nothing is said of a medicine whose strength is not known in the unit of the rule.
 */
export function doseOutside(regimen: Regimen, dosing: Dosing): Problem[] {
  const { asked, form, step, tapering } = dosing;
  const { amount, holds, ordered } = step.giving;
  if (!holds || !form.holds || form.holds.unit !== regimen.dose.unit.split("/")[0]) return [];
  const size = form.holds.value;
  const { least, most } = boundsOf(regimen, asked.kg, step.every.hours);
  const pieces = (mass: Exact) => toStep(mass.div(size), form.step);

  const above = (bound: Exact) =>
    ordered?.gt(bound.times(printed)) ||
    amount.gt(pieces(bound.times(printed))) ||
    holds.gt(bound.times(rounding.plus(1)));
  const below = (bound: Exact) =>
    ordered?.lt(bound.div(printed)) ||
    amount.lt(pieces(bound.div(printed))) ||
    holds.lt(bound.times(new Exact(1).minus(rounding)));
  if (most && above(most)) return [outside("over", regimen, dosing)];
  return least && !tapering && below(least) ? [outside("under", regimen, dosing)] : [];
}

function outside(side: "over" | "under", regimen: Regimen, { asked, step }: Dosing): Problem {
  const { dose } = step.order;
  const { active, give } = step.giving;
  const values = {
    medicine: asked.planned.name,
    given: dose ? told(dose) : `${told(give)} (${active ? told(active.perKg) : "?"})`,
    limit: ruleText(regimen, side === "over" ? "most" : "least"),
    source: regimen.source,
  };
  const at = asked.at(...step.path, dose ? "dose" : "give");
  if (regimen.standing === "usual") return problem("dose-unusual", at, values);
  return problem(side === "over" ? "dose-over-limit" : "dose-under-limit", at, values);
}
