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

/** A rule in words the clinician can look up: "6.25 mg/lb every 12 h". */
export function ruleText({ dose, ceiling, every }: Regimen, bound: "least" | "most"): string {
  const value = dose[bound] ?? (bound === "most" ? ceiling?.most : null) ?? "?";
  const day = dose.per === "day" ? "/day" : "";
  const hours =
    every === null || dose.per === "day"
      ? ""
      : every.least === every.most
        ? ` / ${every.least} h`
        : ` / ${every.least}-${every.most} h`;
  return `${value} ${dose.unit}${day}${hours}`;
}
