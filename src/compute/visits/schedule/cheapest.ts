import type { DayGraph, Node, Step } from "./graph.js";

/**
 * Leaves only what lies on a cheapest way from the discharge to an evening when all is over and no booking is left.
 * layers: the evenings whose price ahead is not known yet; it is added.
 */
export function keepCheapest({ layers }: DayGraph, lastBooked: number, ahead: Map<Node, number>): DayGraph {
  for (let depth = layers.length - 1; depth >= 0; depth--)
    for (const node of layers[depth] ?? []) {
      const priceOf = ({ price, to }: Step) => price + (ahead.get(to) ?? Number.POSITIVE_INFINITY);
      let least = node.over && depth >= lastBooked ? 0 : Number.POSITIVE_INFINITY;
      for (const step of node.steps) least = Math.min(least, priceOf(step));
      node.steps = node.steps.filter((step) => priceOf(step) === least);
      ahead.set(node, least);
    }
  const [start] = layers[0] ?? [];
  if (!start || ahead.get(start) === Number.POSITIVE_INFINITY) return { layers: [] };

  const kept: Node[][] = [];
  for (let layer = [start]; layer.length > 0; ) {
    kept.push(layer);
    const next = new Set<Node>();
    for (const { steps } of layer) for (const { to } of steps) next.add(to);
    layer = [...next];
  }
  return { layers: kept };
}
