import { type Problem, problem } from "#problems/problem.js";
import type { Agenda } from "./agenda.js";
import { closedWindow } from "./closed-day.js";
import type { CourseModel, Once } from "./course.js";
import type { Span } from "./language/line.js";
import type { Scenario } from "./scenario.js";
import { nothingAgreed, type Solved, solve } from "./solve.js";

/** How many days a visit is let out of its window to find one that would do, little by little; no closure is longer. */
const slacks = [1, 2, 3, 5, 8, 13, 21, 34, 55, 90];
/** More ways the wound may go than this would only tell of the same visits again. */
const enough = 20;

/**
 * Why some ways the wound may go have no schedule: every single visit whose window has no day, or none that goes with the
 * others, and the nearest day that would do; of all answers the one that moves the fewest. Empty where none is found.
 */
export function blockedVisits(model: CourseModel, stuck: readonly Scenario[], agenda: Agenda): Problem[] {
  const ways = stuck.slice(0, enough);
  for (const slack of slacks) {
    const solved = solve(model, ways, agenda, { ...nothingAgreed, slack });
    if (!solved) return [];
    if (solved.length === ways.length) return [...tellMoved(model, solved, agenda).values()];
  }
  return [];
}

/** One problem for each visit that had to be moved, by its index: in the likeliest way that moves it. */
function tellMoved({ onces }: CourseModel, solved: readonly Solved[], agenda: Agenda): Map<number, Problem> {
  const told = new Map<number, Problem>();
  for (const { best } of solved)
    for (const { day, done } of best)
      for (const { item } of done) {
        const once = onces[item];
        const found = once && !told.has(item) && tellIfMoved(once, windowOf(once, best), day, agenda);
        if (found) told.set(item, found);
      }
  return told;
}

/** The window as written, in days after discharge, by the day on which what it counts from then was. */
function windowOf({ after, when }: Once, best: Solved["best"]): Span {
  const base = best.findLast(({ done }) => done.some(({ item }) => item === after))?.day ?? 0;
  return { from: base + when.value.from, to: base + when.value.to };
}

function tellIfMoved({ kind, slot, when }: Once, { from, to }: Span, near: number, agenda: Agenda): Problem | null {
  if (from <= near && near <= to) return null;
  const reach = agenda.reach(kind.value, slot);
  if (reach.nextUsable(from) > to) return closedWindow(agenda, reach, { from, to }, when.at, near);
  const on = (number: number) => ({ day: agenda.dayOf(number) });
  if (from === to) return problem("day-against-others", when.at, { day: on(from), nearest: on(near) });
  return problem("window-against-others", when.at, { from: on(from), to: on(to), nearest: on(near) });
}
