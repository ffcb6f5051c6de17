import { type Places, placeOf } from "#problems/place.js";
import { type Outcome, problem } from "#problems/problem.js";
import { checkShape } from "./check-shape.js";
import { checkAllowed } from "./checks/allowed.js";
import { checkBirth } from "./checks/birth.js";
import { checkClock } from "./checks/clock.js";
import { checkDischargeDay } from "./checks/discharge-day.js";
import { checkWeight } from "./checks/weight.js";
import { clinicSchema } from "./clinic-schema.js";
import type { Clinic, Plan } from "./plan.js";
import { planSchema } from "./schema.js";
import { type Source, textOf } from "./text-of.js";
import { readYaml, type Written } from "./yaml.js";

export type Sources = { plan: Source; clinic?: Source | undefined };

/** The path of the clinic profile that a plan names, or null: it is written in the plan, or cannot be read. */
export function clinicPath(plan: Source): string | null {
  const { data } = read(plan, "");
  const clinic = typeof data === "object" && data !== null && "clinic" in data ? data.clinic : null;
  return typeof clinic === "string" && clinic !== "" ? clinic : null;
}

/**
 * Reads a plan and its clinic profile (YAML or JSON, UTF-8, up to 1 MiB each) and checks each on its own.
 * today: "2026-03-04", the day it is read. All problems are told at once; there is a plan only where none stops it.
 */
export function readPlan(sources: Sources, { today }: { today: string }): Outcome<Plan> {
  const plan = read(sources.plan, "");
  const written = plan.data === undefined ? null : checkShape(planSchema, plan.data, plan.places);
  const clinic = readClinic(sources, plan, written?.value?.clinic);
  const problems = [...plan.problems, ...(written?.problems ?? []), ...clinic.problems];
  if (!written?.value || !clinic.value || plan.problems.length > 0) return { value: null, problems };

  const value: Plan = { ...written.value, clinic: clinic.value, places: { ...plan.places, ...clinic.places } };
  const checked = [
    ...checkDischargeDay(value, today),
    ...checkBirth(value),
    ...checkWeight(value),
    ...checkClock(value),
    ...checkAllowed(value),
  ];
  return { value, problems: [...problems, ...checked] };
}

/** Text that cannot be read has no data, and problems that say why. */
function read(source: Source, prefix: string): Written {
  const text = textOf(source);
  return text.value === null
    ? { data: undefined, places: {}, problems: text.problems }
    : readYaml(source.file, text.value, prefix);
}

/** The profile is a file of its own, or stands in the plan itself. */
function readClinic(
  { clinic: source }: Sources,
  plan: Written,
  inPlan: string | Clinic | undefined,
): Outcome<Clinic> & { places: Places } {
  if (typeof inPlan === "object") return { value: inPlan, problems: [], places: {} };
  if (!source) {
    const missing =
      typeof inPlan === "string" ? [problem("file-not-found", placeOf(plan.places, "clinic"), { path: inPlan })] : [];
    return { value: null, problems: missing, places: {} };
  }
  const { data, places, problems } = read(source, "clinic");
  if (data === undefined) return { value: null, problems, places };
  const shaped = checkShape(clinicSchema, data, places, "clinic");
  return { value: problems.length > 0 ? null : shaped.value, problems: [...problems, ...shaped.problems], places };
}
