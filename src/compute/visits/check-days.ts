import { type Problem, problem } from "#problems/problem.js";
import type { Agenda } from "./agenda.js";
import type { CourseModel } from "./course.js";
import type { Stretch } from "./schedule/run-outlook.js";
import type { Solved } from "./solve.js";

const codes = {
  must: { closed: "repeat-meets-closed-day", absent: "repeat-meets-absence" },
  may: { closed: "repeat-may-meet-closed-day", absent: "repeat-may-meet-absence" },
} as const;

/**
 * Tells of every gap of a repeating visit that the clinic's days cannot keep: asked where it must come, noted where it
 * comes only if the wound needs so many. Nothing is moved in silence; where no day for months will do, it stops.
 */
export function checkStretches({ runs }: CourseModel, solved: readonly Solved[], agenda: Agenda): Problem[] {
  const found = new Map<string, { stretch: Stretch; scenarios: number }>();
  for (const { best } of solved)
    for (const stretch of best.flatMap(({ stretches }) => stretches)) {
      const name = `${stretch.run}:${stretch.phase}:${stretch.due}`;
      found.set(name, { stretch, scenarios: (found.get(name)?.scenarios ?? 0) + 1 });
    }
  return [...found.values()].flatMap(({ stretch: { run, phase, due, next }, scenarios }) => {
    const line = runs[run]?.phases[phase];
    if (!line) return [];
    if (next === Number.POSITIVE_INFINITY)
      return [problem("no-day-near", line.gap.at, { day: { day: agenda.dayOf(due) } })];
    const { closed, absent } = codes[scenarios === solved.length ? "must" : "may"];
    const code = agenda.on(due).hours.length === 0 ? closed : absent;
    return [problem(code, line.gap.at, { day: { day: agenda.dayOf(due) }, after: { day: agenda.dayOf(next) } })];
  });
}

/** Tells of the days on which the partner clinic must stand in. */
export function checkPartnerDays({ onces, runs }: CourseModel, solved: readonly Solved[], agenda: Agenda): Problem[] {
  const told = new Map<number, Problem>();
  for (const { day, done } of solved.flatMap(({ best }) => best)) {
    const { partner } = agenda.on(day);
    const [first] = done;
    if (partner === null || !first || told.has(day)) continue;
    const at = onces[first.item]?.when.at ?? runs[first.item - onces.length]?.phases[first.phase]?.gap.at;
    if (at) told.set(day, problem("visit-at-partner", at, { day: { day: agenda.dayOf(day) }, partner }));
  }
  return [...told.values()];
}
