import type { Regimen } from "#tables/medicines.js";
import type { Asked } from "../asked.js";
import type { Form } from "../made-up.js";
import type { Step } from "../steps.js";

/** One step of a course as a rule sees it. days: up to its end; clinicDoses: given before it went home. */
export type Dosing = {
  asked: Asked;
  form: Form;
  step: Step;
  days: number;
  /** Whether the course ends with it. */
  last: boolean;
  clinicDoses: number;
  asNeeded: boolean;
  /** Less a day than the course began with: held to the highest dose, but not to the lowest, nor to the days. */
  tapering: boolean;
};

/** The end of a rule as it is for this animal and interval, in the unit of its dose. */
type Here = { unit: string; value: string; hours: number };

/**
 * A rule in words the clinician can look up, and what it comes to where the dose is in another unit: "6.25 mg/lb / 12 h",
 * "6.25 mg/lb / 12 h (13.78 mg/kg)", "3 mg/kg/day (1.5 mg/kg / 12 h)".
 */
export function ruleText({ dose, ceiling, every }: Regimen, bound: "least" | "most", here: Here | null): string {
  const value = dose[bound] ?? (bound === "most" ? ceiling?.most : null) ?? "?";
  const byDay = dose.per === "day";
  const hours =
    every === null || byDay
      ? ""
      : every.least === every.most
        ? ` / ${every.least} h`
        : ` / ${every.least}-${every.most} h`;
  const rule = `${value} ${dose.unit}${byDay ? "/day" : ""}${hours}`;
  if (!here) return rule;
  if (byDay && here.hours !== 24) return `${rule} (${here.value} / ${here.hours} h)`;
  return here.unit === dose.unit ? rule : `${rule} (${here.value})`;
}
