import type { Outcome } from "#problems/problem.js";
import { checkShape } from "./check-shape.js";
import { checkAllowed } from "./checks/allowed.js";
import { checkBirth } from "./checks/birth.js";
import { checkClock } from "./checks/clock.js";
import { checkDischargeDay } from "./checks/discharge-day.js";
import { checkWeight } from "./checks/weight.js";
import { checkWeightBorneOut } from "./checks/weight-borne-out.js";
import type { Plan } from "./plan.js";
import { readClinic, type Sources } from "./read-clinic.js";
import { readText } from "./read-text.js";
import { planSchema } from "./schema.js";

/**
 * Reads a plan, its clinic profile and its price list (YAML or JSON, UTF-8, up to 1 MiB each) and checks each on its own.
 * today: "2026-03-04", the day it is read. All problems are told at once; there is none where it cannot be reckoned with.
 */
export function readPlan(sources: Sources, { today }: { today: string }): Outcome<Plan> {
  const plan = readText(sources.plan, "");
  const written = plan.data === undefined ? null : checkShape(planSchema, plan.data, plan.places);
  const clinic = readClinic(sources, plan, written?.value?.clinic);
  const problems = [...plan.problems, ...(written?.problems ?? []), ...clinic.problems];
  if (!written?.value || !clinic.value || plan.problems.length > 0) return { value: null, problems };

  const value: Plan = { ...written.value, clinic: clinic.value, places: { ...plan.places, ...clinic.places } };
  const checked = [
    ...checkDischargeDay(value, today),
    ...checkBirth(value),
    ...checkWeight(value),
    ...checkWeightBorneOut(value),
    ...checkClock(value),
    ...checkAllowed(value),
  ];
  // Where the zone is not known no time can be told: there is nothing further to look at.
  const timeless = checked.some(({ code }) => code === "zone-unknown");
  return { value: timeless ? null : value, problems: [...problems, ...checked] };
}
