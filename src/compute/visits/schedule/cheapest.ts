import type { DayGraph, Node } from "./graph.js";

/**
 * Leaves only what lies on a cheapest way from the discharge to an evening when all is over and no booking is left.
 * layers: the evenings whose price ahead is not known yet; it is added.
 */
export function keepCheapest({ layers }: DayGraph, lastBooked: number, ahead: Map<Node, number>): DayGraph {
  for (let depth = layers.length - 1; depth >= 0; depth--)
    for (const node of layers[depth] ?? []) {
      const prices = node.steps.map(({ price, to }) => price + (ahead.get(to) ?? Number.POSITIVE_INFINITY));
      const stay = node.over && depth >= lastBooked ? 0 : Number.POSITIVE_INFINITY;
      const least = Math.min(stay, ...prices);
      if (prices.some((price) => price > least || price === Number.POSITIVE_INFINITY))
        node.steps = node.steps.filter((_, i) => prices[i] === least && least < Number.POSITIVE_INFINITY);
      ahead.set(node, least);
    }
  const [start] = layers[0] ?? [];
  if (!start || ahead.get(start) === Number.POSITIVE_INFINITY) return { layers: [] };

  const kept: Node[][] = [];
  for (let layer = [start]; layer.length > 0; ) {
    kept.push(layer);
    layer = [...new Set(layer.flatMap(({ steps }) => steps.map(({ to }) => to)))];
  }
  return { layers: kept };
}
