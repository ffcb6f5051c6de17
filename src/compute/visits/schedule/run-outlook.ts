import { middle } from "../course.js";
import type { SetPhase } from "../scenario.js";

/**
 * Where a run stands: its phase, the day the next gap counts from, the phase's last day and visits left where known.
 * closed: its last visit has been, which is told only of a run that others count from.
 */
export type RunState = { phase: number; last: number; end: number; left: number; begun: boolean; closed: boolean };

/** A gap that no usable day could keep: from the first day a visit was due to the first day it could be. */
export type Stretch = { run: number; phase: number; due: number; next: number };

/** A way on: the run stands in `state` and is next seen between two days, at the price of the stretched gaps so far. */
export type WayOn = { state: RunState; from: number; to: number; aim: number; stretches: readonly Stretch[] };
/**
 * All ways on, and from which day (and at what price) the run may be over without another visit. waits: it has not begun,
 * for the visit it begins after has not been.
 */
export type Outlook = {
  waysOn: WayOn[];
  over: { from: number; stretches: readonly Stretch[] } | null;
  waits: boolean;
};

/** The days one visit can be on. nextUsable: the first from a day on, infinite if there is none. */
export type VisitDays = { usable: (day: number) => boolean; nextUsable: (from: number) => number };

/** What a run needs to know of the rest of the course: its phases' days, and those of the visits it begins or ends with. */
export type Around = { phases: readonly VisitDays[]; dayOf: (once: number) => number | null };

export function enterPhase(phases: readonly SetPhase[], phase: number, last: number): RunState {
  const set = phases[phase];
  const end = set?.day ?? (set?.days && !set.first ? last + set.days : Number.POSITIVE_INFINITY);
  return { phase, last, end, left: set?.times ?? Number.POSITIVE_INFINITY, begun: false, closed: false };
}

/**
 * How a run can go on from where it stands. A phase is over when the next visit would be due after its end; where every
 * day of a gap is closed, the gap is stretched to the next usable day, and that has its price.
 */
export function outlook(run: number, phases: readonly SetPhase[], now: RunState, around: Around): Outlook {
  const waysOn: WayOn[] = [];
  let stretches: readonly Stretch[] = [];
  /** No gap is given up before its last day is gone: the visit that ends the phase may still come first. */
  let overFrom = 0;
  for (let state = now; ; ) {
    const set = phases[state.phase];
    if (!set) return { waysOn, over: { from: overFrom, stretches }, waits: false };
    const base = baseOf(set, state, around);
    if (base === null) return { waysOn, over: null, waits: true };
    const window = state.begun ? set.gap : (set.first ?? set.gap);
    const due = { from: base + window.from, to: base + window.to };
    const ended = set.until.map((once) => (around.dayOf(once) ?? Number.POSITIVE_INFINITY) - 1);
    const end = state.left === 0 ? 0 : Math.min(state.end, ...ended);
    const to = Math.min(due.to, end);
    const aim = middle(due);
    const next = around.phases[set.index]?.nextUsable ?? never;
    const open = next(due.from);
    if (open <= to) waysOn.push({ state, from: open, to, aim, stretches });
    const passed = enterPhase(phases, state.phase + 1, base);
    if (due.to > end) {
      state = passed;
      continue;
    }
    if (open <= to) return { waysOn, over: null, waits: false };
    stretches = [...stretches, { run, phase: set.index, due: due.from, next: open }];
    if (open > end) {
      overFrom = Math.max(overFrom, due.to);
      state = passed;
      continue;
    }
    waysOn.push({ state, from: open, to: open, aim, stretches });
    return { waysOn, over: null, waits: false };
  }
}

const never = () => Number.POSITIVE_INFINITY;

/** The day the next visit counts from; null where nobody can know yet. */
function baseOf({ first, firstAfter }: SetPhase, { begun, last }: RunState, { dayOf }: Around): number | null {
  if (begun || !first) return last;
  return firstAfter === null ? 0 : dayOf(firstAfter);
}

/** The run after a visit on `day`. */
export function visited(phases: readonly SetPhase[], state: RunState, day: number): RunState {
  const set = phases[state.phase];
  const end = !state.begun && set?.first && set.days ? day + set.days - 1 : state.end;
  return { ...state, last: day, end, left: state.left - 1, begun: true };
}
