import type { CourseModel } from "../course.js";
import type { Scenario } from "../scenario.js";
import { keepCheapest } from "./cheapest.js";
import type { Evenings } from "./evenings.js";
import type { DayGraph, Days, Node, Part, Step } from "./graph.js";
import { enterPhase, type RunState } from "./run-outlook.js";
import { lastVisitOf, runOver, runParts, type SetRun } from "./run-parts.js";
import { dayDone, forgetDays, singleParts, singlesOver, startSingles, waitingOrder } from "./singles.js";

/** A gap that had to be stretched over closed days weighs more than any number of days at the partner's. */
const stretchPrice = 1000;

/**
 * Every schedule of one scenario, as ways through days: windows and gaps are kept, only usable days are used, each booked
 * day is used, and of all schedules only those with the least price remain. Evenings that another scenario has led to
 * before are met again and not worked out anew. No layers where there is no schedule; null where there are more new
 * evenings to look at than `room`.
 */
export function dayGraph(
  model: CourseModel,
  scenario: Scenario,
  days: Days,
  met: Evenings,
  room: number,
): DayGraph | null {
  const expand = expander(model, scenario, days, met);
  const layers: Node[][] = [[expand.start]];
  let left = room;
  for (let day = 1; ; day++) {
    const open = (layers[day - 1] ?? []).filter(({ over }) => !over);
    const layer = expand.through(open, day, left);
    if (!layer) return null;
    if (layer.length === 0) return keepCheapest({ layers }, days.lastBooked, met.prices);
    left -= layer.length;
    layers.push(layer);
  }
}

function expander({ onces }: CourseModel, scenario: Scenario, days: Days, met: Evenings) {
  const order = waitingOrder(onces);
  const sets = scenario.runs.map((phases, run): SetRun => {
    const item = onces.length + run;
    return { item, run, phases, counted: onces.some(({ after }, i) => after === item && scenario.happens[i]) };
  });

  /** What a run may still do from each of its phases on, told by a number that is the same in every scenario. */
  const ahead = sets.map((set) => Array.from({ length: set.phases.length + 1 }, (_, phase) => met.ahead(set, phase)));

  const node = (singles: number[], runs: RunState[]): Node => ({
    singles,
    runs,
    over: singlesOver(singles) && sets.every((set, run) => runs[run] && runOver(set, runs[run])),
    steps: [],
  });

  /** The new evenings that open ones lead to over one day; like evenings are one. Null where there are too many. */
  const through = (open: readonly Node[], day: number, room: number): Node[] | null => {
    const layer: Node[] = [];
    const known = met.on(day);
    const use = days.use(day);
    const enter = (from: Node, single: Part<number[]>, parts: Part<RunState>[]): void => {
      const done = [...single.done, ...parts.flatMap((part) => part.done)];
      if (use.booked && done.length === 0) return;
      if (done.length > 1 && !days.together(day, done)) return;
      const runs = parts.map(({ state }) => state);
      const singles = forgetDays(onces, scenario, single.state, runs);
      const key = keyOf(singles, runs, ahead);
      let to = known.get(key);
      if (!to) {
        to = node(singles, runs);
        known.set(key, to);
        layer.push(to);
      }
      const stretches = parts.flatMap((part) => part.stretches);
      const price = single.price + (done.length > 0 ? use.price : 0) + stretches.length * stretchPrice;
      const off = parts.reduce((sum, part) => sum + part.off, single.off);
      from.steps.push({ day, done, stretches, price, off, to } satisfies Step);
    };
    for (const from of open) {
      const lastOf = (item: number) => {
        const [set, state] = [sets[item - onces.length], from.runs[item - onces.length]];
        return set && state ? lastVisitOf(set, state) : null;
      };
      const singles = singleParts(onces, order, days, from.singles, day, lastOf, room);
      if (!singles || layer.length > room) return null;
      for (const single of singles) {
        const dayOf = (index: number) => dayDone(single.state[index]);
        const perRun = sets.map((set, run) => {
          const state = from.runs[run];
          return state ? runParts(set, state, day, { phases: days.runs[run] ?? [], dayOf }) : [];
        });
        for (const parts of combinations(perRun)) enter(from, single, parts);
      }
    }
    return layer;
  };

  const start = node(
    startSingles(scenario),
    sets.map(({ phases }) => enterPhase(phases, 0, 0)),
  );
  return { start, through };
}

const keyOf = (singles: readonly number[], runs: readonly RunState[], ahead: readonly (readonly number[])[]) => {
  let key = singles.join();
  for (const [run, { phase, last, end, left, begun, closed }] of runs.entries())
    key += `;${ahead[run]?.[phase]},${last},${end},${left},${begun},${closed}`;
  return key;
};

const combinations = <T>(lists: readonly T[][]): T[][] =>
  lists.reduce<T[][]>((all, list) => all.flatMap((head) => list.map((item) => [...head, item])), [[]]);
