import type { CourseModel, Once, Phase, Run } from "./course.js";
import type { Span } from "./language/line.js";

/** The first and last day on which a single visit can fall by its words alone. */
export function boundsOf(onces: readonly Once[], index: number): Span {
  const once = onces[index];
  if (!once) return { from: 0, to: 0 };
  const { from, to } = once.when.value;
  if (once.after === null) return { from, to };
  const anchor = boundsOf(onces, once.after);
  return { from: anchor.from + from, to: anchor.to + to };
}

/** Where a phase can begin and end by its words alone. base: the day its first gap counts from. */
export type PhaseBounds = { base: Span; begins: Span; ends: Span };

/** Of each phase of a run, in order. */
export function phaseBounds(onces: readonly Once[], run: Run): PhaseBounds[] {
  const all: PhaseBounds[] = [];
  let base: Span = { from: 0, to: 0 };
  for (const phase of run.phases) {
    const bounds = boundsAfter(onces, phase, base);
    all.push(bounds);
    // The last visit lies less than a gap before the end.
    base = {
      from: Math.max(base.from, bounds.ends.from - phase.gap.value.to + 1),
      to: Math.max(base.to, bounds.ends.to),
    };
  }
  return all;
}

function boundsAfter(onces: readonly Once[], phase: Phase, base: Span): PhaseBounds {
  const gap = phase.gap.value;
  const begins = phase.first?.value ?? { from: base.from + gap.from, to: base.to + gap.to };
  const ends = limitBounds(phase, base, begins);
  if (!phase.until) return { base, begins, ends };
  const event = boundsOf(onces, phase.until.value);
  if (!phase.limit) return { base, begins, ends: { from: event.from - 1, to: event.to - 1 } };
  return { base, begins, ends: { from: Math.min(ends.from, event.from - 1), to: ends.to } };
}

function limitBounds({ limit, first, gap }: Phase, base: Span, begins: Span): Span {
  if (!limit) return begins;
  const { from, to } = limit.span.value;
  if (limit.kind === "day") return { from, to };
  if (limit.kind === "times")
    return { from: begins.from + gap.value.from * (from - 1), to: begins.to + gap.value.to * (to - 1) };
  const starts = first?.value ?? { from: base.from + 1, to: base.to + 1 };
  return { from: starts.from + from - 1, to: starts.to + to - 1 };
}

/** The last day a visit of a care can fall on by its words alone, leaving out decisions that name no day; 0 for none. */
export function lastDay({ onces, runs }: CourseModel, care: number): number {
  const singles = onces.flatMap((once, i) => (once.open || once.care !== care ? [] : [boundsOf(onces, i).to]));
  const repeats = runs
    .filter((run) => run.care === care)
    .flatMap((run) => phaseBounds(onces, run).map(({ ends }) => ends.to));
  return Math.max(0, ...singles, ...repeats);
}
