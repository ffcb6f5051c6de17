import { type Outcome, type Problem, problem } from "#problems/problem.js";
import type { MedicineRow } from "#tables/medicines.js";
import type { Medicine } from "../facts.js";
import { toldIn } from "../told.js";
import type { Asked } from "./asked.js";
import { notBorneOut, type Reckoned } from "./borne-out.js";
import { dayAfter, dayOf } from "./clock.js";
import { daysOpen } from "./container.js";
import { type Course, courseOf } from "./course.js";
import { type Dispensed, dispensed } from "./dispense.js";
import { type Schedule, scheduleOf } from "./schedule.js";
import { statementsOf } from "./statements.js";
import { daysOf, type Step } from "./steps.js";
import { stretchesOf } from "./stretches.js";

type Said = MedicineRow["statements"];

/**
 * Everything that follows for one medicine. rows: what the table holds of what it is called, the closest first; common: what
 * is said of every medicine, known to the table or not.
 */
export function medicineOf(asked: Asked, rows: readonly MedicineRow[], common: Said): Outcome<Medicine> {
  const row = rows[0] ?? null;
  const { course, dispense, ...now } = reckoned(asked, row);
  if (!course) return { value: null, problems: now.problems };
  const schedule = scheduled(asked, course);
  const ends = endsOtherwise(asked, course.steps, schedule.value);
  const unborne = notBorneOut(asked, course, [...now.problems, ...ends], (other) => withEnd(other, row));
  const problems = [...now.problems, ...schedule.problems, ...ends, ...unborne];
  if (!schedule.value || !dispense) return { value: null, problems };
  return { value: assembled(asked, rows, common, { ...course, ...schedule.value, ...dispense }), problems };
}

/** How much is given, and how much of it goes home. */
function reckoned(asked: Asked, row: MedicineRow | null): Reckoned & { dispense: Dispensed | null } {
  const { value: course, problems } = courseOf(asked, row);
  if (!course) return { course, dispense: null, problems };
  const dispense = dispensed(asked, course.form, course.steps, course.most);
  const home = doubted(problems) ? dispense.problems.map(followsFromDose) : dispense.problems;
  return { course, dispense: dispense.value, problems: [...problems, ...home] };
}

const doseCodes = new Set<Problem["code"]>(["dose-over-limit", "dose-unusual", "dose-unit-doubtful", "many-at-once"]);
const doubted = (problems: readonly Problem[]) => problems.some(({ code }) => doseCodes.has(code));

/** Nobody is told to hand out more of a dose that is doubted itself: it is told as what follows from it. */
const followsFromDose = (one: Problem): Problem =>
  one.code === "dispensed-too-little" ? { ...one, values: { ...one.values, context: "dose" } } : one;

/** The same, and whether it ends when the plan says; its doses are laid out only if the plan does. */
function withEnd(asked: Asked, row: MedicineRow | null): Reckoned {
  const { course, problems } = reckoned(asked, row);
  const { until, expires } = asked.planned;
  if (!course || (until === undefined && expires === undefined)) return { course, problems };
  const { value } = scheduled(asked, course);
  return { course, problems: [...problems, ...endsOtherwise(asked, course.steps, value)] };
}

/** What is given only as needed has no times. */
const scheduled = (asked: Asked, { steps, most }: Course): Outcome<Schedule> =>
  most === null ? scheduleOf(asked, steps) : { value: { doses: [], lastGiven: null }, problems: [] };

/** The day of the last dose; of what is given only as needed, the last day of the course. */
const endOf = ({ discharged }: Asked, steps: readonly Step[], schedule: Schedule | null): string =>
  dayOf(schedule?.doses.at(-1)?.at ?? dayAfter(dayOf(discharged), daysOf(steps)));

/** It may be used to the last dose, and ends on the day the clinician says it ends. */
function endsOtherwise(asked: Asked, steps: readonly Step[], schedule: Schedule | null): Problem[] {
  const { expires, until, name } = asked.planned;
  const end = endOf(asked, steps, schedule);
  const values = { medicine: name, last: { day: end } };
  const problems: Problem[] = [];
  if (expires !== undefined && end > expires)
    problems.push(problem("expires-before-end", asked.at("expires"), { ...values, expires: { day: expires } }));
  if (until !== undefined && end !== until)
    problems.push(problem("days-and-until-differ", asked.at("until"), { ...values, until: { day: until } }));
  return problems;
}

type Parts = Schedule & Dispensed & Course;

function assembled(asked: Asked, rows: readonly MedicineRow[], common: Said, parts: Parts): Medicine {
  const { planned, id } = asked;
  const row = rows[0] ?? null;
  const { form, steps, most, doses, lastGiven, dispense, holds, leftOver } = parts;
  const said = row?.statements ?? common;
  const [opening] = steps;
  const open = daysOpen(asked);
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
    goesOn: false,
    lastGiven,
    doses,
    first: doses[0]?.at ?? null,
    last: doses.at(-1)?.at ?? null,
    expires: planned.expires ?? null,
    dispense,
    holds,
    onceOpened: open === null ? null : { value: String(open), unit: "day" },
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
