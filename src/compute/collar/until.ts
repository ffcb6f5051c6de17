import { isValid, parseISO } from "date-fns";
import type { Plan } from "#plan/plan.js";
import { placeOf } from "#problems/place.js";
import { type Outcome, type Problem, problem } from "#problems/problem.js";
import type { CollarRules } from "#tables/collars.js";
import type { Collar, Course, Day } from "../facts.js";
import type { Asked } from "./choose.js";

/** Until when the collar stays on: an event whose day nobody knows yet, or a day. Never worked out from the course. */
export function readUntil(plan: Plan, asked: Asked, course: Course, rules: CollarRules): Outcome<Collar["until"]> {
  const at = placeOf(plan.places, "collar", "until");
  const given = asked.until.trim().toLowerCase();

  const event = rules.until.find((one) => one.event === given);
  if (event) {
    const kinds = course.visits.flatMap(({ purposes }) => purposes.map(({ kind }) => kind));
    const ends = rules.until.filter(({ visits }) => visits.some((kind) => kinds.includes(kind)));
    const values = { event: event.event, visits: event.visits, ends: ends.map(({ event }) => event) };
    const never = ends.includes(event) ? [] : [problem("collar-until-never", at, values)];
    return { value: { event: event.id, day: null }, problems: never };
  }

  if (!/^\d{4}-\d{2}-\d{2}$/.test(given) || !isValid(parseISO(given))) {
    const known = rules.until.map(({ event }) => event);
    return { value: null, problems: [problem("collar-until-unknown", at, { given: asked.until, known })] };
  }
  const discharged = plan.discharged.slice(0, 10);
  if (given <= discharged) {
    const values = { given: { day: given }, discharged: { day: discharged } };
    return { value: null, problems: [problem("collar-until-past", at, values)] };
  }
  const early = rules.until.flatMap(({ tooEarlyBefore, visits }): Problem[] => {
    const needed = tooEarlyBefore && lastDay(course, visits);
    return needed && given < needed
      ? [problem("collar-off-early", at, { until: { day: given }, needed: { day: needed } })]
      : [];
  });
  return { value: { event: null, day: given }, problems: early.slice(0, 1) };
}

/** The first day on which the last of these visits that is sure to come can be over. */
function lastDay(course: Course, kinds: readonly string[]): Day | undefined {
  return course.visits
    .filter(({ certainty, purposes }) => certainty !== "possible" && purposes.some(({ kind }) => kinds.includes(kind)))
    .map(({ earliest }) => earliest)
    .sort()
    .at(-1);
}
