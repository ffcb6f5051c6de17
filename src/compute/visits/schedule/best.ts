import type { DayGraph, Node, Step } from "./graph.js";

/** Exact in a double as long as a course has fewer than a million days of being off its ideal days. */
const tripWeight = 1_000_000;

const weigh = ({ done, off }: Step) => (done.length > 0 ? tripWeight : 0) + off;

/**
 * The schedule with the fewest trips and, among those, the fewest days off the ideal ones: shortest path through the
 * days, so exact. Ties go to the earlier day.
 */
export function bestSchedule({ layers }: DayGraph): Step[] {
  const ahead = new Map<Node, { cost: number; step: Step | null }>();
  for (const layer of layers.toReversed())
    for (const node of layer) {
      let best: { cost: number; step: Step | null } | null = null;
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
