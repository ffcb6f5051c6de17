import { type Outcome, type Problem, problem, stops } from "#problems/problem.js";
import type { MedicineRow } from "#tables/medicines.js";
import { readAsNeeded } from "./as-needed.js";
import type { Asked } from "./asked.js";
import { formOf } from "./form.js";
import { labelProblems, limitProblems } from "./limits/limits.js";
import type { Form } from "./made-up.js";
import { manyAtOnce, unlikelySyringe, unlistedStrength, veryManyDays } from "./plausible.js";
import { routeProblems } from "./route.js";
import { daysOf, type Step, stepsOf } from "./steps.js";

/** How much of a medicine is given, how often and for how long. most: a day, of one given only as needed; else null. */
export type Course = { form: Form; steps: Step[]; most: number | null };

/** The course that a plan asks for, held against every rule about amounts; when its doses fall is not looked at. */
export function courseOf(asked: Asked, row: MedicineRow | null): Outcome<Course> {
  const { value: form, problems: unformed } = formOf(asked);
  if (!form) return { value: null, problems: unformed };
  const { value: steps, problems: unstepped } = stepsOf(asked, form);
  const listed = row ? [...labelProblems(row, asked, form), ...unlistedStrength(asked, form, row)] : [];
  const { value: most, problems: needed } = asNeeded(asked, steps);
  const problems = [...routeProblems(asked), ...listed, ...unstepped, ...needed];
  if (!steps || stops(needed)) return { value: null, problems };
  return { value: { form, steps, most }, problems: [...problems, ...checks(asked, form, steps, row, most !== null)] };
}

/** The most a day of a medicine given only as needed; null for one given by the clock. */
function asNeeded({ planned, at }: Asked, steps: Step[] | null): Outcome<number> {
  const text = planned["as needed"];
  if (text === undefined) return { value: null, problems: [] };
  const most = readAsNeeded(text);
  if (most === null)
    return { value: null, problems: [problem("as-needed-unreadable", at("as needed"), { given: text })] };
  const hours = steps?.[0]?.every.hours ?? 0;
  const values = { medicine: planned.name, most, hours };
  const many = most * hours > 24 ? [problem("as-needed-too-many", at("as needed"), values)] : [];
  return { value: most, problems: many };
}

function checks(asked: Asked, form: Form, steps: Step[], row: MedicineRow | null, asNeeded: boolean): Problem[] {
  const many = steps.flatMap((step) => [...manyAtOnce(asked, form, step), ...unlikelySyringe(asked, form, step)]);
  const allDays = daysOf(steps);
  const given = asked.planned["last given"];
  const clinicDoses = given === undefined || given === "not given" ? 0 : 1;
  let days = 0;
  const limits = steps.flatMap((step, i) => {
    days += step.days;
    const last = i === steps.length - 1;
    const tapering = steps[0] !== undefined && perDay(step).lt(perDay(steps[0]));
    return row ? limitProblems(row, { asked, form, step, days, last, clinicDoses, asNeeded, tapering }) : [];
  });
  const long = limits.some(({ code }) => code === "days-over-limit") ? [] : veryManyDays(asked, allDays);
  return [...limits, ...many, ...long];
}

const perDay = ({ giving, every }: Step) => giving.amount.div(every.hours);
