import { type Outcome, type Problem, problem } from "#problems/problem.js";
import type { MedicineRow } from "#tables/medicines.js";
import type { Medicine } from "../facts.js";
import { toldIn } from "../told.js";
import type { Asked } from "./asked.js";
import { notBorneOut } from "./borne-out.js";
import { dayAfter, dayOf } from "./clock.js";
import { type Course, courseOf } from "./course.js";
import { type Dispensed, dispensed } from "./dispense.js";
import { type Schedule, scheduleOf } from "./schedule.js";
import { statementsOf } from "./statements.js";
import type { Step } from "./steps.js";
import { stretchesOf } from "./stretches.js";

type Said = MedicineRow["statements"];

/**
 * Everything that follows for one medicine. rows: what the table holds of what it is called, the closest first; common: what
 * is said of every medicine, known to the table or not.
 */
export function medicineOf(asked: Asked, rows: readonly MedicineRow[], common: Said): Outcome<Medicine> {
  const { value: course, problems: unordered } = courseOf(asked, rows[0] ?? null);
  if (!course) return { value: null, problems: unordered };
  const { form, steps, most } = course;
  const schedule = most === null ? scheduleOf(asked, steps) : unscheduled;
  const dispense = dispensed(asked, form, steps, most);
  const problems = [
    ...unordered,
    ...notBorneOut(asked, rows[0] ?? null, course, unordered),
    ...schedule.problems,
    ...dispense.problems,
    ...outlasts(asked, steps, schedule.value?.doses.at(-1)?.at),
  ];
  if (!schedule.value || !dispense.value) return { value: null, problems };
  return { value: assembled(asked, rows, common, { ...course, ...schedule.value, ...dispense.value }), problems };
}

/** What is given only as needed has no times. */
const unscheduled: Outcome<Schedule> = { value: { doses: [], lastGiven: null }, problems: [] };

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

type Parts = Schedule & Dispensed & Course;

function assembled(asked: Asked, rows: readonly MedicineRow[], common: Said, parts: Parts): Medicine {
  const { planned, id } = asked;
  const row = rows[0] ?? null;
  const { form, steps, most, doses, lastGiven, dispense, leftOver } = parts;
  const said = row?.statements ?? common;
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
    onBox: planned.drops ?? planned.ointment ?? planned.spray ?? planned.patch ?? null,
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
    statements: statementsOf(asked, form, said),
    cautions: statementsOf(
      asked,
      form,
      said.filter(({ label }) => label),
    ),
    from: asked.at(),
  };
}
