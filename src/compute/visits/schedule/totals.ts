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

/**
 * The day of the last trip at the earliest and at the latest, over the ways that have a trip at all; null if none has.
 * lastTrips: last days of the trips still to come, of the evenings known so far; 0 stands for a way on which none comes.
 */
export function endsOf({ layers }: DayGraph, lastTrips: Map<Node, Set<number>>): Range | null {
  const noTrip = new Set([0]);
  for (const layer of layers.toReversed())
    for (const node of layer) {
      if (lastTrips.has(node)) continue;
      const days = new Set<number>();
      for (const { to, done, day } of node.steps)
        for (const last of lastTrips.get(to) ?? noTrip) days.add(last || (done.length > 0 ? day : 0));
      lastTrips.set(node, days.size > 0 ? days : noTrip);
    }
  const [start] = layers[0] ?? [];
  const trips = [...((start && lastTrips.get(start)) ?? noTrip)].filter((day) => day > 0);
  return trips.length > 0 ? { least: Math.min(...trips), most: Math.max(...trips) } : null;
}
