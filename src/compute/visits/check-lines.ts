import { type Problem, problem } from "#problems/problem.js";
import type { Agenda } from "./agenda.js";
import { boundsOf, firstDay as firstDays, type PhaseBounds, phaseBounds } from "./bounds.js";
import { closedWindow } from "./closed-day.js";
import type { CourseModel, Once, Phase } from "./course.js";
import type { Said, Span } from "./language/line.js";
import type { UsualDays } from "./usual.js";

/**
 * What is wrong or out of the ordinary with the lines of a course before any schedule is tried. goesOn: an earlier paper began
 * it, so a line that says "day 2-4" counts from this paper, and not from what was done to the animal.
 */
export function checkLines(model: CourseModel, agenda: Agenda, usual: UsualDays, goesOn: boolean): Problem[] {
  const { onces, runs } = model;
  return [
    ...onces.flatMap((once, i) => [
      ...checkWindow(agenda, once, boundsOf(model, i)),
      ...checkUsual(once, usual, goesOn),
    ]),
    ...runs.flatMap((run) => {
      const bounds = phaseBounds(model, run);
      return run.phases.flatMap((phase, i) => {
        const at = bounds[i];
        return [...(at ? checkRoom(agenda, phase, at, firstDays(model, phase)) : []), ...checkUsualGap(phase)];
      });
    }),
  ];
}

/** Some day of the window can be kept. */
function checkWindow(agenda: Agenda, { kind, slot, when, open }: Once, { from, to }: Span): Problem[] {
  const reach = agenda.reach(kind.value, slot);
  if (open || reach.nextUsable(from) <= to) return [];
  return [closedWindow(agenda, reach, { from, to }, when.at)];
}

/** A phase begins before it ends, and its gap fits into it. */
function checkRoom(agenda: Agenda, phase: Phase, { base, begins, ends }: PhaseBounds, first: Span | null): Problem[] {
  const { gap, limit } = phase;
  const firstDay = first?.from ?? base.from + 1;
  const said = limit?.span ?? phase.until;
  if (ends.to < firstDay) {
    const days = { begins: { day: agenda.dayOf(firstDay) }, ends: { day: agenda.dayOf(ends.to) } };
    return [problem("course-ends-before-it-begins", said.at, days)];
  }
  const secondDay = first ? first.from + gap.value.from : begins.from;
  if (limit?.kind === "times" || !limit || secondDay <= ends.to) return [];
  return [
    problem("gap-longer-than-window", gap.at, {
      gap: gap.value.from,
      window: ends.to - (first ? firstDay : base.from),
    }),
  ];
}

const outside = ({ value }: Said<Span>, usual: Span | null): usual is Span =>
  usual !== null && (value.from < usual.from || value.to > usual.to);

function checkUsual({ care, kind, when, open, after }: Once, usualDays: UsualDays, goesOn: boolean): Problem[] {
  const usual = usualDays(care, kind.value);
  if (open || (goesOn && after === null) || !outside(when, usual)) return [];
  const { from, to } = when.value;
  const values = { given: kind.text, from, to, usualFrom: usual.from, usualTo: usual.to };
  return [problem("window-unusual", when.at, values)];
}

function checkUsualGap({ kind, gap }: Phase): Problem[] {
  const { usualGap } = kind.value;
  if (!outside(gap, usualGap)) return [];
  const { from, to } = gap.value;
  const values = { given: kind.text, from, to, usualFrom: usualGap.from, usualTo: usualGap.to };
  return [problem("gap-unusual", gap.at, values)];
}
