import { type Problem, problem } from "#problems/problem.js";
import type { Regimen } from "#tables/medicines.js";
import { told } from "../exact.js";
import { giving } from "../give.js";
import { doseOutside } from "./dose.js";
import type { Dosing } from "./dosing.js";

const units = ["mg/kg", "mg/lb", "mg"] as const;

/** A dose that keeps no rule, and would keep one with another unit, is more likely a slip of the unit. */
export function doubtfulUnit(regimens: readonly Regimen[], dosing: Dosing): Problem[] | null {
  const { asked, form, step } = dosing;
  const { dose } = step.order;
  if (!dose || !regimens.every((regimen) => doseOutside(regimen, dosing).length > 0)) return null;
  const at = asked.at(...step.path, "dose");
  const where = { medicine: asked.planned.name, at, dose: at, give: at };
  for (const unit of units.filter((other) => other !== dose.unit)) {
    const meant = { dose: { ...dose, unit } };
    const { value } = giving(meant, form, asked, where);
    const instead = value && { ...dosing, step: { ...step, order: meant, giving: value } };
    if (instead && regimens.some((regimen) => doseOutside(regimen, instead).length === 0))
      return [
        problem("dose-unit-doubtful", at, { medicine: where.medicine, given: told(dose), other: told(meant.dose) }),
      ];
  }
  return null;
}
