import type { SetPhase } from "../scenario.js";
import { idle, type Part } from "./graph.js";
import { type Around, outlook, type RunState, visited, type WayOn } from "./run-outlook.js";

/**
 * A run as the days see it: its place among the items, its index, and the phases the scenario has set. counted: others
 * count days from its last visit, so that it must have one, and it is known which one it is.
 */
export type SetRun = { item: number; run: number; phases: readonly SetPhase[]; counted: boolean };

export const runOver = ({ phases }: SetRun, { phase }: RunState): boolean => phase >= phases.length;

/** The day of a run's last visit, once it has been; 0, the day of discharge, where it has none; null before. */
export const lastVisitOf = (set: SetRun, state: RunState): number | null =>
  state.closed || runOver(set, state) ? state.last : null;

/** All that a run may do on a day: come, where a way on leads there; or not yet, while one leads to a later day. */
export function runParts(set: SetRun, state: RunState, day: number, around: Around): Part<RunState>[] {
  if (runOver(set, state)) return [{ state, ...idle }];
  const { waysOn, over, waits } = outlook(set.run, set.phases, state, around);
  const ways = state.closed ? [] : waysOn.filter((way) => canCome(set, way, day, around));
  const parts = ways.flatMap((way) => come(set, way, day));
  if (waits || waysOn.some(({ to }) => to > day) || (over && day < over.from)) parts.push({ state, ...idle });
  else if (over && state.closed === set.counted)
    parts.push({ ...idle, state: finished(set, state), stretches: over.stretches });
  return parts;
}

function canCome({ phases }: SetRun, { state, from, to }: WayOn, day: number, around: Around): boolean {
  const usable = around.phases[phases[state.phase]?.index ?? 0]?.usable(day) ?? false;
  return usable && from <= day && day <= to;
}

/** A visit; of a counted run it may be the last one, or not. */
function come({ item, phases, counted }: SetRun, { state, aim, stretches }: WayOn, day: number): Part<RunState>[] {
  const now = visited(phases, state, day);
  return (counted ? [now, { ...now, closed: true }] : [now]).map((state) => ({
    state,
    done: [{ item, phase: phases[state.phase]?.index ?? 0 }],
    stretches,
    off: Math.abs(day - aim),
    price: 0,
  }));
}

const finished = ({ phases, counted }: SetRun, { last }: RunState): RunState => ({
  phase: phases.length,
  last: counted ? last : 0,
  end: 0,
  left: 0,
  begun: false,
  closed: false,
});
