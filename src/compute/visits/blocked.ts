import type { Problem } from "#problems/problem.js";
import type { Agenda } from "./agenda.js";
import { closedWindow } from "./closed-day.js";
import type { CourseModel, Once } from "./course.js";
import type { Span } from "./language/line.js";
import type { Scenario } from "./scenario.js";
import { nothingAgreed, type Solved, solve } from "./solve.js";

/** How many days a window is widened to find one that would do; no closure is longer. */
const farthest = 90;

/**
 * Why a way the wound may go has no schedule: the single visit whose window has no day on which somebody is there, and
 * the nearest day that would do. Empty where no one window is to blame.
 */
export function blockedVisit(model: CourseModel, scenario: Scenario, agenda: Agenda): Problem[] {
  const { onces } = model;
  for (let far = 1; far <= farthest; far++)
    for (const [index, once] of onces.entries()) {
      if (once.open || !scenario.happens[index]) continue;
      for (const wider of [later(once, far), earlier(once, far)]) {
        const [solved] = solve({ ...model, onces: onces.with(index, wider) }, [scenario], agenda, nothingAgreed) ?? [];
        const day = solved && dayOf(solved, index);
        if (day === undefined) continue;
        const reach = agenda.reach(once.kind.value, once.slot);
        const window = asWritten(once.when.value, wider.when.value, day);
        const free = daysIn(window).some(reach.usable);
        return free ? [] : [closedWindow(agenda, reach, window, once.when.at, day)];
      }
    }
  return [];
}

const widened = (once: Once, value: Span): Once => ({ ...once, when: { ...once.when, value } });
const later = (once: Once, far: number) => widened(once, { from: once.when.value.from, to: once.when.value.to + far });
const earlier = (once: Once, far: number) =>
  widened(once, { from: Math.max(1, once.when.value.from - far), to: once.when.value.to });

const dayOf = ({ best }: Solved, index: number): number | undefined =>
  best.find(({ done }) => done.some(({ item }) => item === index))?.day;

/** The window as written, in days after discharge, told by the day outside it on which the visit then fell: at an end. */
function asWritten(written: Span, wide: Span, day: number): Span {
  const base = day - (wide.to > written.to ? wide.to : wide.from);
  return { from: base + written.from, to: base + written.to };
}

const daysIn = ({ from, to }: Span): number[] => Array.from({ length: to - from + 1 }, (_, i) => from + i);
