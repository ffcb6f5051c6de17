import type { Node } from "./graph.js";
import type { SetRun } from "./run-parts.js";

/**
 * The evenings that scenarios of one course lead to. Two that stand alike, with the same still to come, are one, whatever
 * scenario led there: what is true of all that may follow is worked out once.
 */
export type Evenings = {
  /** Those of a day by how things stand. */
  on: (day: number) => Map<string, Node>;
  /** A number for all that a run has before it from a phase on; runs of other scenarios that have the same share it. */
  ahead: (run: SetRun, phase: number) => number;
  /** The least price from an evening to the end of the course. */
  prices: Map<Node, number>;
};

export function noEvenings(): Evenings {
  const days: Map<string, Node>[] = [];
  const numbers = new Map<string, number>();
  return {
    on: (day) => {
      days[day] ??= new Map();
      return days[day];
    },
    ahead: ({ phases, counted }, phase) => {
      const name = JSON.stringify([counted, phases.slice(phase)]);
      const number = numbers.get(name) ?? numbers.size;
      numbers.set(name, number);
      return number;
    },
    prices: new Map(),
  };
}
