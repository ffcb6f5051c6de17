import { type Outcome, type Problem, problem, stops } from "#problems/problem.js";
import type { MedicineRow } from "#tables/medicines.js";
import type { Medicine } from "../facts.js";
import { toldIn } from "../told.js";
import { readAsNeeded } from "./as-needed.js";
import type { Asked } from "./asked.js";
import { dayAfter, dayOf } from "./clock.js";
import { type Dispensed, dispensed } from "./dispense.js";
import { formOf } from "./form.js";
import { labelProblems, limitProblems } from "./limits/limits.js";
import type { Form } from "./made-up.js";
import { manyAtOnce, unlikelySyringe, unlistedStrength, veryManyDays } from "./plausible.js";
import { type Schedule, scheduleOf } from "./schedule.js";
import { statementsOf } from "./statements.js";
import { type Step, stepsOf } from "./steps.js";
import { stretchesOf } from "./stretches.js";

type Said = MedicineRow["statements"];

/**
 * Everything that follows for one medicine. rows: what the table holds of what it is called, the closest first; common: what
 * is said of every medicine, known to the table or not.
 */
export function medicineOf(asked: Asked, rows: readonly MedicineRow[], common: Said): Outcome<Medicine> {
  const row = rows[0] ?? null;
  const { value: form, problems: unformed } = formOf(asked);
  if (!form) return { value: null, problems: unformed };
  const { value: steps, problems: unstepped } = stepsOf(asked, form);
  const listed = row ? [...labelProblems(row, asked, form), ...unlistedStrength(asked, form, row)] : [];
  const { value: most, problems: needed } = asNeeded(asked, steps);
  const problems = [...listed, ...unstepped, ...needed];
  if (!steps || stops(needed)) return { value: null, problems };

  const schedule = most === null ? scheduleOf(asked, steps) : unscheduled;
  const dispense = dispensed(asked, form, steps, most);
  problems.push(...checks(asked, form, steps, row, most !== null), ...schedule.problems, ...dispense.problems);
  problems.push(...outlasts(asked, steps, schedule.value?.doses.at(-1)?.at));
  if (!schedule.value || !dispense.value) return { value: null, problems };
  return {
    value: assembled(asked, rows, common, { form, steps, most, ...schedule.value, ...dispense.value }),
    problems,
  };
}

/** What is given only as needed has no times. */
const unscheduled: Outcome<Schedule> = { value: { doses: [], lastGiven: null }, problems: [] };

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
  const allDays = steps.reduce((sum, { days }) => sum + days, 0);
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
  return [...many, ...limits, ...long];
}

const perDay = ({ giving, every }: Step) => giving.amount.div(every.hours);

/** It may be used to the last dose; of what is given only as needed, to the last day of the course. */
function outlasts({ planned, discharged, at }: Asked, steps: readonly Step[], last: string | undefined): Problem[] {
  const { expires, name } = planned;
  const days = steps.reduce((sum, step) => sum + step.days, 0);
  const end = dayOf(last ?? dayAfter(dayOf(discharged), days));
  if (expires === undefined || end <= expires) return [];
  return [
    problem("expires-before-end", at("expires"), { medicine: name, expires: { day: expires }, last: { day: end } }),
  ];
}

type Parts = Schedule & Dispensed & { form: Form; steps: Step[]; most: number | null };

function assembled(asked: Asked, rows: readonly MedicineRow[], common: Said, parts: Parts): Medicine {
  const { planned, id } = asked;
  const row = rows[0] ?? null;
  const { form, steps, most, doses, lastGiven, dispense, leftOver } = parts;
  const [opening] = steps;
  if (!opening) throw new RangeError("a medicine without steps");
  return {
    id,
    name: planned.name,
    substance: row?.id ?? null,
    called: rows.length === 1 && row ? row.id : null,
    group: row?.groups[0]?.id ?? null,
    form: form.kind,
    strength: form.strength,
    route: planned.route,
    give: opening.giving.give,
    active: opening.giving.active,
    everyHours: opening.every.hours,
    steps: stretchesOf(asked, steps, doses),
    asNeededMost: most,
    food: planned.food ?? row?.food?.how ?? null,
    purpose: planned.why === undefined ? null : toldIn(planned.why, asked.staffLanguage),
    missed: planned.missed === undefined ? null : toldIn(planned.missed, asked.staffLanguage),
    lastGiven,
    doses,
    first: doses[0]?.at ?? null,
    last: doses.at(-1)?.at ?? null,
    expires: planned.expires ?? null,
    dispense,
    leftOver,
    statements: statementsOf(asked, form, row?.statements ?? common),
    from: asked.at(),
  };
}
