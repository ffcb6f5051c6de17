import type { SetPhase } from "../scenario.js";

/** Where a run stands: its phase, the day the next gap counts from, the phase's last day and visits left where known. */
export type RunState = { phase: number; last: number; end: number; left: number; begun: boolean };

/** A gap that no usable day could keep: from the first day a visit was due to the first day it could be. */
export type Stretch = { run: number; phase: number; due: number; next: number };

/** A way on: the run stands in `state` and is next seen between two days, at the price of the stretched gaps so far. */
export type WayOn = { state: RunState; from: number; to: number; stretches: readonly Stretch[] };
/** All ways on, and from which day (and at what price) the run may be over without another visit. */
export type Outlook = { waysOn: WayOn[]; over: { from: number; stretches: readonly Stretch[] } | null };

/** What a run needs to know of the rest of the course: usable days and the days of the visits that end its phases. */
export type Around = { nextUsable: (from: number) => number; dayOf: (once: number) => number | null };

export function enterPhase(phases: readonly SetPhase[], phase: number, last: number): RunState {
  const set = phases[phase];
  const end = set?.day ?? (set?.days && !set.first ? last + set.days : Number.POSITIVE_INFINITY);
  return { phase, last, end, left: set?.times ?? Number.POSITIVE_INFINITY, begun: false };
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
  for (let state = now; ; state = enterPhase(phases, state.phase + 1, state.last)) {
    const set = phases[state.phase];
    if (!set) return { waysOn, over: { from: overFrom, stretches } };
    const due =
      !state.begun && set.first ? set.first : { from: state.last + set.gap.from, to: state.last + set.gap.to };
    const ended = set.until === null ? null : around.dayOf(set.until);
    const end = state.left === 0 ? 0 : Math.min(state.end, ended === null ? Number.POSITIVE_INFINITY : ended - 1);
    const to = Math.min(due.to, end);
    const open = due.from <= to ? around.nextUsable(due.from) : Number.POSITIVE_INFINITY;
    if (open <= to) waysOn.push({ state, from: open, to, stretches });
    if (due.to > end) continue;
    if (open <= to) return { waysOn, over: null };
    stretches = [...stretches, { run, phase: set.index, due: due.from, next: open }];
    if (open > end) {
      overFrom = Math.max(overFrom, due.to);
      continue;
    }
    waysOn.push({ state, from: open, to: open, stretches });
    return { waysOn, over: null };
  }
}

/** The run after a visit on `day`. */
export function visited(phases: readonly SetPhase[], state: RunState, day: number): RunState {
  const set = phases[state.phase];
  const end = !state.begun && set?.first && set.days ? day + set.days - 1 : state.end;
  return { phase: state.phase, last: day, end, left: state.left - 1, begun: true };
}
