import type { DayGraph, Node, Step } from "./graph.js";

export type WayAhead = { cost: number; step: Step | null };

/** Exact in a double as long as a course has fewer than a million days of being off its ideal days. */
const tripWeight = 1_000_000;

const weigh = ({ done, off }: Step) => (done.length > 0 ? tripWeight : 0) + off;

/**
 * The schedule with the fewest trips and, among those, the fewest days off the ideal ones: shortest path through the
 * days, so exact. Ties go to the earlier day. ahead: the best way on from evenings known so far; those of the graph are added.
 */
export function bestSchedule({ layers }: DayGraph, ahead: Map<Node, WayAhead>): Step[] {
  for (const layer of layers.toReversed())
    for (const node of layer) {
      if (ahead.has(node)) continue;
      let best: WayAhead | null = null;
      for (const step of node.steps) {
        const cost = weigh(step) + (ahead.get(step.to)?.cost ?? 0);
        const earlier = best?.step && cost === best.cost && step.done.length > best.step.done.length;
        if (!best || cost < best.cost || earlier) best = { cost, step };
      }
      ahead.set(node, best ?? { cost: 0, step: null });
    }
  const path: Step[] = [];
  for (let [node] = layers[0] ?? []; node; ) {
    const step = ahead.get(node)?.step;
    if (!step) break;
    path.push(step);
    node = step.to;
  }
  return path;
}
