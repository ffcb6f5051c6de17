import type { DayGraph, Node, Step } from "./graph.js";

/**
 * A place in the course for one thing to be done: the n-th time (from 1) a run is seen in its stretch of the course.
 * Booked days cut the course into stretches, so that what is agreed on a day stays what it is however the days before
 * it turn out. A single visit is one slot wherever it falls.
 */
export type Slot = { item: number; stretch: number; number: number; phase: number };

/** How slots are told apart: how many items are single visits, and which stretch a day belongs to. */
export type Cut = { singles: number; stretch: (day: number) => number };

/** Before the first booked day 0, on it 1, between it and the second 2 ... */
export const cutAt = (singles: number, booked: readonly number[]): Cut => ({
  singles,
  stretch: (day) => 2 * booked.filter((number) => number < day).length + (booked.includes(day) ? 1 : 0),
});

/** Where a slot may fall over every way through one graph; always: no way leaves it out. */
export type SlotDays = Slot & { days: Set<number>; always: boolean };

export const slotName = ({ item, stretch, number }: Omit<Slot, "phase">): string => `${item}:${stretch}:${number}`;

/** Every slot of a graph by its name. */
export function slotsOf(graph: DayGraph, cut: Cut): Map<string, SlotDays> {
  const inOrder: SlotDays[] = [];
  /** The same by item, stretch and number: many steps lead to few slots. */
  const known: SlotDays[][][] = [];
  const least: number[][] = [];
  walk(graph, cut, {
    step: ({ day, done }, stretch, counts) => {
      for (const { item, phase } of done) {
        const single = item < cut.singles;
        const row = at(at(known, item), single ? 0 : stretch);
        for (const count of single ? onlyOnce : (counts[item - cut.singles] ?? [])) {
          const slot = row[count];
          if (slot) slot.days.add(day);
          else {
            const days = new Set([day]);
            row[count] = { item, stretch: single ? 0 : stretch, number: count + 1, phase, days, always: single };
            inOrder.push(row[count]);
          }
        }
      }
    },
    close: (item, stretch, counts) => {
      const stretches = at(least, item);
      stretches[stretch] = Math.min(stretches[stretch] ?? Number.POSITIVE_INFINITY, ...counts);
    },
  });
  for (const slot of inOrder) slot.always ||= slot.number <= (least[slot.item]?.[slot.stretch] ?? 0);
  return new Map(inOrder.map((slot) => [slotName(slot), slot]));
}

const onlyOnce = [0];

/** The list at a place of a list of lists, made where there is none yet. */
function at<T>(lists: T[][], index: number): T[] {
  lists[index] ??= [];
  return lists[index];
}

/** For each run, how often it may have been seen in the current stretch by the time a node is reached. */
type Counts = Set<number>[];

/** step: every step, with the counts there may be before it. close: the counts of a run at the end of a stretch. */
type Visitor = {
  step: (step: Step, stretch: number, counts: Counts) => void;
  close: (item: number, stretch: number, counts: ReadonlySet<number>) => void;
};

function walk({ layers }: DayGraph, cut: Cut, visitor: Visitor): void {
  const before = new Map<Node, Counts>();
  const fresh = ({ runs }: Node): Counts => runs.map(() => new Set([0]));
  for (const [depth, layer] of layers.entries()) {
    const [stretch, next] = [cut.stretch(depth), cut.stretch(depth + 1)];
    for (const node of layer) {
      let counts = before.get(node) ?? fresh(node);
      const close = (closing: number) => {
        for (const [run, set] of counts.entries()) visitor.close(cut.singles + run, closing, set);
      };
      if (stretch !== next) {
        close(stretch);
        counts = fresh(node);
      }
      if (node.steps.length === 0) close(next);
      for (const step of node.steps) {
        visitor.step(step, next, counts);
        const ahead = before.get(step.to) ?? node.runs.map(() => new Set<number>());
        before.set(step.to, ahead);
        for (const [run, set] of counts.entries()) {
          const seen = step.done.some(({ item }) => item === cut.singles + run) ? 1 : 0;
          for (const count of set) ahead[run]?.add(count + seen);
        }
      }
    }
  }
}
