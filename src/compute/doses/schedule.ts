import { type Outcome, type Problem, problem } from "#problems/problem.js";
import type { Dose, LocalTime } from "../facts.js";
import type { Asked } from "./asked.js";
import { startOf } from "./first-time.js";
import { nextTime, type Timed } from "./next-time.js";
import { slotsFor } from "./slots.js";
import type { Step } from "./steps.js";

/** Every dose at home on the clinic's clock, and when the clinic last gave it. */
export type Schedule = { doses: Dose[]; lastGiven: LocalTime | null };

/** Lists the doses of all steps. Where a step ends, the next begins when the old one would have gone on. */
export function scheduleOf(asked: Asked, steps: readonly Step[]): Outcome<Schedule> {
  const [opening] = steps;
  if (!opening) return { value: { doses: [], lastGiven: null }, problems: [] };
  const times = steps.map(({ every }) => slotsFor(every, asked.household));
  const uneven = steps.filter((_, i) => times[i]?.even === false).flatMap((step) => unevenTimes(asked, step));
  const start = startOf(asked, opening.every.hours, times[0]?.slots ?? []);
  if (!start.value) return { value: null, problems: [...uneven, ...start.problems] };

  const { first, lastGiven } = start.value;
  const given: (Timed & { step: Step })[] = [];
  steps.forEach((step, i) => {
    for (let n = 0; n < step.count; n++) {
      const before = given.at(-1);
      const timed = before ? nextTime(before.at, before.step.every.hours, times[i]?.slots ?? [], asked.zone) : first;
      given.push({ ...timed, step });
    }
  });
  const doses = given.map(({ at, slot, step }, i) => ({
    medicine: asked.id,
    number: i + 1,
    at,
    slot: slot.at,
    part: slot.part,
    give: step.giving.give,
    from: asked.at(...step.path),
  }));
  return { value: { doses, lastGiven }, problems: [...uneven, ...start.problems] };
}

function unevenTimes({ planned, household, at }: Asked, { every, path }: Step): Problem[] {
  const values = { medicine: planned.name, ...household, every: every.hours };
  return [problem("household-times-uneven", at(...path, "every"), values)];
}
