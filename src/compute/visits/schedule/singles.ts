import { middle, type Once } from "../course.js";
import type { Span } from "../language/line.js";
import type { Scenario } from "../scenario.js";
import { type Days, idle, type Part } from "./graph.js";
import { movedPrice } from "./moved.js";
import type { RunState } from "./run-outlook.js";

/** How a single visit stands: the day it was done (from 1), or one of these. */
const pending = 0;
const never = -1;
/** Done, and nothing asks any longer on which day. */
const past = -2;

export const startSingles = ({ happens }: Scenario): number[] => happens.map((yes) => (yes ? pending : never));
export const singlesOver = (singles: readonly number[]): boolean => !singles.includes(pending);
export const dayDone = (state: number | undefined): number | null => (state !== undefined && state > 0 ? state : null);

/** Indices of the single visits, each after the one it waits for. */
export function waitingOrder(onces: readonly Once[]): number[] {
  const order = new Set<number>();
  const add = (item: number): void => {
    const once = onces[item];
    if (!once) return;
    if (once.after !== null) add(once.after);
    order.add(item);
  };
  for (const index of onces.keys()) add(index);
  return [...order];
}

/**
 * All that the single visits may do on a day. Each comes within its window, on a usable day, or not yet. lastOf: the day of
 * a run's last visit (by its item) once it has been. Null where there are more ways than `room`.
 */
export function singleParts(
  onces: readonly Once[],
  order: readonly number[],
  { fixed, slack, onces: days }: Days,
  before: number[],
  day: number,
  lastOf: (run: number) => number | null,
  room: number,
): Part<number[]>[] | null {
  let parts: Part<number[]>[] = [{ state: before, ...idle }];
  for (const index of order) {
    const once = onces[index];
    if (!once || before[index] !== pending) continue;
    const loose = once.open ? 0 : slack;
    const from = Math.max(Math.min(1, once.when.value.from), once.when.value.from - loose);
    const to = once.when.value.to + loose;
    parts = parts.flatMap((part) => {
      const base = baseOf(once, part.state, lastOf);
      const agreed = fixed.get(index);
      if (base === null) return [part];
      // The day that is agreed is one of its own, from the day it counts from: another day of that one is out.
      if (agreed !== undefined && (agreed < base + from || agreed > base + to)) return [];
      if (day < (agreed ?? base + from)) return [part];
      const last = agreed ?? base + to;
      if (day > last) return [];
      const wait = day < last ? [part] : [];
      if (!days[index]?.usable(day)) return wait;
      const come = {
        state: part.state.with(index, day),
        done: [...part.done, { item: index, phase: 0 }],
        stretches: part.stretches,
        off: part.off + Math.abs(day - base - middle(once.when.value)),
        price: part.price + movedPrice(after(base, once.when.value), day, days[index]),
      };
      return [come, ...wait];
    });
    if (parts.length > room) return null;
  }
  return parts;
}

const after = (base: number, { from, to }: Span): Span => ({ from: base + from, to: base + to });

/** The day a single visit counts from: that of the visit it waits for, once it has been, else that of discharge. */
function baseOf({ after }: Once, singles: readonly number[], lastOf: (run: number) => number | null): number | null {
  if (after === null) return 0;
  return after < singles.length ? dayDone(singles[after]) : lastOf(after);
}

/** Two states whose difference nobody asks for any more are one: drops the days of visits nothing waits for. */
export function forgetDays(
  onces: readonly Once[],
  { runs: phases }: Scenario,
  singles: number[],
  runs: readonly RunState[],
): number[] {
  const asked = (index: number) =>
    onces.some(({ after }, i) => after === index && singles[i] === pending) ||
    runs.some(({ phase }, r) =>
      phases[r]?.some(({ until, firstAfter }, p) => p >= phase && (until.includes(index) || firstAfter === index)),
    );
  return singles.map((day, index) => (day > 0 && !asked(index) ? past : day));
}
