import { middle } from "../course.js";
import type { SetPhase } from "../scenario.js";
import { idle, type Part } from "./graph.js";
import { type Around, outlook, type RunState, visited, type WayOn } from "./run-outlook.js";

/** A run as the days see it: its place among the items, its index, and the phases the scenario has set. */
export type SetRun = { item: number; run: number; phases: readonly SetPhase[] };

export const runOver = ({ phases }: SetRun, { phase }: RunState): boolean => phase >= phases.length;

/** All that a run may do on a day: come, where a way on leads there; or not yet, while one leads to a later day. */
export function runParts(set: SetRun, state: RunState, day: number, usable: boolean, around: Around): Part<RunState>[] {
  if (runOver(set, state)) return [{ state, ...idle }];
  const { waysOn, over } = outlook(set.run, set.phases, state, around);
  const parts = usable
    ? waysOn.filter(({ from, to }) => from <= day && day <= to).map((way) => come(set, way, day))
    : [];
  if (waysOn.some(({ to }) => to > day) || (over && day < over.from)) parts.push({ state, ...idle });
  else if (over) parts.push({ ...idle, state: finished(set.phases), stretches: over.stretches });
  return parts;
}

function come({ item, phases }: SetRun, { state, stretches }: WayOn, day: number): Part<RunState> {
  const phase = phases[state.phase];
  const aim = phase && (!state.begun && phase.first ? middle(phase.first) : state.last + middle(phase.gap));
  return {
    state: visited(phases, state, day),
    done: [{ item, phase: phase?.index ?? 0 }],
    stretches,
    off: Math.abs(day - (aim ?? day)),
  };
}

const finished = ({ length: phase }: readonly SetPhase[]): RunState => ({
  phase,
  last: 0,
  end: 0,
  left: 0,
  begun: false,
});
