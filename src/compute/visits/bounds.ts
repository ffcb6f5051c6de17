import { type CourseModel, decisionOf, type Phase, type Run } from "./course.js";
import type { Span } from "./language/line.js";

/** The first and last day on which a single visit, or the last of a run, can fall by its words alone; 0: no day. */
export function boundsOf(model: CourseModel, item: number): Span {
  const once = model.onces[item];
  if (!once) return lastVisit(model, model.runs[item - model.onces.length]);
  const { from, to } = once.when.value;
  if (once.after === null) return { from, to };
  const anchor = boundsOf(model, once.after);
  return { from: anchor.from + from, to: anchor.to + to };
}

function lastVisit(model: CourseModel, run: Run | undefined): Span {
  const last = run && phaseBounds(model, run).at(-1);
  if (!run || !last) return { from: 0, to: 0 };
  return { from: run.phases.some(({ maybe }) => maybe) ? 0 : last.last.from, to: last.last.to };
}

/** Where a phase can begin and end by its words alone. base: the day its first gap counts from; last: its last visit. */
export type PhaseBounds = { base: Span; begins: Span; ends: Span; last: Span };

/** Of each phase of a run, in order. */
export function phaseBounds(model: CourseModel, run: Run): PhaseBounds[] {
  const all: PhaseBounds[] = [];
  let base: Span = { from: 0, to: 0 };
  for (const phase of run.phases) {
    const bounds = boundsAfter(model, phase, base);
    // The last visit lies less than a gap before the end.
    const last = {
      from: Math.max(base.from, bounds.ends.from - phase.gap.value.to + 1),
      to: Math.max(base.to, bounds.ends.to),
    };
    all.push({ ...bounds, last });
    base = last;
  }
  return all;
}

function boundsAfter(model: CourseModel, phase: Phase, base: Span): Omit<PhaseBounds, "last"> {
  const gap = phase.gap.value;
  const begins = firstDay(model, phase) ?? { from: base.from + gap.from, to: base.to + gap.to };
  const ends = limitBounds(phase, base, begins);
  const events = phase.until.onces.map((index) => boundsOf(model, index));
  if (events.length === 0) return { base, begins, ends };
  const soonest = Math.min(...events.map(({ from }) => from)) - 1;
  if (phase.limit) return { base, begins, ends: { from: Math.min(ends.from, soonest), to: ends.to } };
  // Without a limit only what is certain ends it.
  return { base, begins, ends: { from: soonest, to: Math.min(...certain(model, phase)) - 1 } };
}

/** The window of a phase's first visit by its words alone; null where it only follows the visit before. */
export function firstDay(model: CourseModel, { first }: Phase): Span | null {
  if (!first) return null;
  const { from, to } = first.span.value;
  const after = first.after === null ? { from: 0, to: 0 } : boundsOf(model, first.after);
  return { from: after.from + from, to: after.to + to };
}

const certain = (model: CourseModel, { until }: Phase): number[] =>
  until.onces.filter((index) => !decisionOf(model, index)).map((index) => boundsOf(model, index).to);

function limitBounds({ limit, first, gap }: Phase, base: Span, begins: Span): Span {
  if (!limit) return begins;
  const { from, to } = limit.span.value;
  if (limit.kind === "day") return { from, to };
  if (limit.kind === "times")
    return { from: begins.from + gap.value.from * (from - 1), to: begins.to + gap.value.to * (to - 1) };
  const starts = first ? begins : { from: base.from + 1, to: base.to + 1 };
  return { from: starts.from + from - 1, to: starts.to + to - 1 };
}

/** The last day a visit of a care can fall on by its words alone, leaving out decisions that name no day; 0 for none. */
export function lastDay(model: CourseModel, care: number): number {
  const { onces, runs } = model;
  const singles = onces.flatMap((once, i) => (once.open || once.care !== care ? [] : [boundsOf(model, i).to]));
  const repeats = runs
    .filter((run) => run.care === care)
    .flatMap((run) => phaseBounds(model, run).map(({ ends }) => ends.to));
  return Math.max(0, ...singles, ...repeats);
}
