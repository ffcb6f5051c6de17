import type { FirstTrip } from "../facts.js";
import type { Agenda } from "./agenda.js";
import type { CourseModel } from "./course.js";
import type { DayGraph, Step } from "./schedule/graph.js";
import type { Solved } from "./solve.js";

/** When the first trip falls over every schedule of every scenario, and what it may be for; null where one has no trip. */
export function firstTripOf({ onces, runs }: CourseModel, solved: readonly Solved[], agenda: Agenda): FirstTrip | null {
  const firsts = solved.map(({ graph }) => firstSteps(graph));
  const steps = firsts.flatMap((found) => found ?? []);
  if (firsts.includes(null)) return null;
  const days = steps.map(({ day }) => day);
  const kindOf = (item: number) => onces[item]?.kind.value.id ?? runs[item - onces.length]?.kind.id ?? "";
  const kinds = new Set(steps.flatMap(({ done }) => done.map(({ item }) => kindOf(item))));
  return {
    earliest: agenda.dayOf(Math.min(...days)),
    latest: agenda.dayOf(Math.max(...days)),
    kinds: [...kinds].map((kind) => ({ kind })),
  };
}

/** The steps that are the first trip of some way through a graph; null where some way has none. */
function firstSteps({ layers }: DayGraph): Step[] | null {
  const found: Step[] = [];
  // All that can be waited for is one: a day without a trip leads to one evening.
  for (let [node] = layers[0] ?? []; node; node = node.steps.find(({ done }) => done.length === 0)?.to) {
    if (node.steps.length === 0) return null;
    found.push(...node.steps.filter(({ done }) => done.length > 0));
  }
  return found;
}
