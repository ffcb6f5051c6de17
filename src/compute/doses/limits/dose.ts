import { type Problem, problem } from "#problems/problem.js";
import type { Regimen } from "#tables/medicines.js";
import type { Amount } from "../../facts.js";
import { Exact, pounds, shown, told } from "../exact.js";
import { roundingPercent } from "../give.js";
import type { Form } from "../made-up.js";
import { orderedAmount } from "../ordered.js";
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

/** Which end of the bounds a dose is past, and whether what was ordered is, or only what it is rounded to. */
type Past = { side: "over" | "under"; ordered: boolean };

/**
 * What was ordered lies in the bounds, and so does what is given once they too are rounded to what can be given, as long as
 * the rounding is small. Nothing is said of a medicine whose strength is not known in the unit of the rule.
 */
export function doseOutside(regimen: Regimen, dosing: Dosing): Problem[] {
  const { asked, form, step, tapering } = dosing;
  const { amount, holds, ordered } = step.giving;
  if (!holds || !form.holds || form.holds.unit !== regimen.dose.unit.split("/")[0]) return [];
  const size = form.holds.value;
  const bounds = boundsOf(regimen, asked.kg, step.every.hours);
  const { least, most } = bounds;
  const pieces = (mass: Exact) => toStep(mass.div(size), form.step);

  const above = (bound: Exact) => amount.gt(pieces(bound.times(printed))) || holds.gt(bound.times(rounding.plus(1)));
  const below = (bound: Exact) =>
    amount.lt(pieces(bound.div(printed))) || holds.lt(bound.times(new Exact(1).minus(rounding)));
  const orderedOver = most !== null && (ordered?.gt(most.times(printed)) ?? false);
  // An order just under the lowest dose that is rounded up to it gives what was published.
  const orderedUnder = least !== null && (ordered?.lt(least.div(printed)) ?? false) && holds.lt(least.div(printed));
  if (most && (orderedOver || above(most)))
    return [outside({ side: "over", ordered: orderedOver }, bounds, regimen, dosing)];
  if (least && !tapering && (orderedUnder || below(least)))
    return [outside({ side: "under", ordered: orderedUnder }, bounds, regimen, dosing)];
  return [];
}

function outside({ side, ordered }: Past, bounds: Bounds, regimen: Regimen, dosing: Dosing): Problem {
  const { asked, form, step } = dosing;
  const { dose } = step.order;
  const { give, holds, ordered: meant } = step.giving;
  const unit = dose && !isCounted(dose, form) ? dose.unit : `${form.holds?.unit}/kg`;
  const one = orderedAmount({ value: "1", unit }, asked).amount;
  const inUnit = (mass: Exact) => `${shown(mass.div(one))} ${unit}`;
  const end = side === "over" ? "most" : "least";
  const bound = bounds[end];
  const values = {
    medicine: asked.planned.name,
    given: dose && ordered && !isCounted(dose, form) ? told(dose) : `${told(give)} (${holds ? inUnit(holds) : "?"})`,
    limit: ruleText(regimen, end, bound && { unit, value: inUnit(bound), hours: step.every.hours }),
    context: timesTen(meant ?? holds, bounds),
    source: regimen.source,
  };
  const at = asked.at(...step.path, dose ? "dose" : "give");
  if (regimen.standing === "usual") return problem("dose-unusual", at, values);
  return problem(side === "over" ? "dose-over-limit" : "dose-under-limit", at, values);
}

/** A dose in millilitres or tablets, which no rule is in. */
const isCounted = ({ unit }: Amount, form: Form) => unit.split("/")[0] !== form.holds?.unit;

/** Whether the point has slipped: with a tenth of it, or ten times as much, the dose would lie in the bounds. */
function timesTen(mass: Exact | null, { least, most }: Bounds): "tenfold" | "tenth" | "" {
  if (!mass) return "";
  // Where no lowest dose is published, half of the highest is still a dose, and less says nothing; where no highest, twice the lowest.
  const atMost = most ?? least?.times(2) ?? null;
  const fits = (other: Exact, atLeast: Exact | null) =>
    atLeast !== null && other.gte(atLeast.div(printed)) && atMost !== null && other.lte(atMost.times(printed));
  if (fits(mass.div(10), least ?? most?.div(2) ?? null)) return "tenfold";
  return fits(mass.times(10), least) ? "tenth" : "";
}
