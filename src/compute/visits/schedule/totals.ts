import type { DayGraph, Node, Step } from "./graph.js";

export type Range = { least: number; most: number };

export const widest = (ranges: readonly Range[]): Range => ({
  least: Math.min(...ranges.map(({ least }) => least)),
  most: Math.max(...ranges.map(({ most }) => most)),
});

/**
 * The least and the most of some sums over the steps of any way through a graph; weigh gives a step's share of each.
 * ahead: what is known of the evenings of other graphs of the same course; those of this one are added.
 */
export function rangesOf(
  { layers }: DayGraph,
  sums: number,
  weigh: (step: Step) => readonly number[],
  ahead: Map<Node, Range[]>,
): Range[] {
  const all = (least: number) => Array.from({ length: sums }, (): Range => ({ least, most: 0 }));
  const nothing = all(0);
  for (const layer of layers.toReversed())
    for (const node of layer) {
      if (ahead.has(node)) continue;
      const ranges = node.steps.length > 0 ? all(Number.POSITIVE_INFINITY) : nothing;
      for (const step of node.steps) {
        const weights = weigh(step);
        const later = ahead.get(step.to) ?? nothing;
        for (const [i, range] of ranges.entries()) {
          range.least = Math.min(range.least, (later[i]?.least ?? 0) + (weights[i] ?? 0));
          range.most = Math.max(range.most, (later[i]?.most ?? 0) + (weights[i] ?? 0));
        }
      }
      ahead.set(node, ranges);
    }
  const [start] = layers[0] ?? [];
  return (start && ahead.get(start)) ?? nothing;
}

const nothingAhead = { least: Number.POSITIVE_INFINITY, most: 0, none: true };

/** When the last trip still to come may be, over the ways that have one; none: there is a way on which none comes. */
export type LastTrip = Range & { none: boolean };

/**
 * The day of the last trip at the earliest and at the latest, over the ways that have a trip at all; null if none has.
 * lastTrips: of the evenings known so far; those of this graph are added.
 */
export function endsOf({ layers }: DayGraph, lastTrips: Map<Node, LastTrip>): Range | null {
  for (const layer of layers.toReversed())
    for (const node of layer) {
      if (lastTrips.has(node)) continue;
      const last = { least: Number.POSITIVE_INFINITY, most: 0, none: node.steps.length === 0 };
      for (const { to, done, day } of node.steps) {
        const { least, most, none } = lastTrips.get(to) ?? nothingAhead;
        const isLast = none && done.length > 0;
        last.least = Math.min(last.least, isLast ? day : least);
        last.most = Math.max(last.most, most, isLast ? day : 0);
        last.none ||= none && !isLast;
      }
      lastTrips.set(node, last);
    }
  const [start] = layers[0] ?? [];
  const { least, most } = (start && lastTrips.get(start)) ?? { least: 0, most: 0 };
  return most > 0 ? { least, most } : null;
}
