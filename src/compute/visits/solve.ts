import type { Agenda } from "./agenda.js";
import type { CourseModel } from "./course.js";
import type { Scenario } from "./scenario.js";
import { bestSchedule } from "./schedule/best.js";
import { dayGraph } from "./schedule/day-graph.js";
import type { DayGraph, Days, DayUse, Step } from "./schedule/graph.js";

/** One way the wound may go, all schedules that serve it, and the best of them. */
export type Solved = { scenario: Scenario; graph: DayGraph; best: Step[] };

/** What is agreed: the days somebody comes, and the single visits already given one of them. */
export type Agreed = { booked: readonly number[]; fixed: ReadonlyMap<number, number> };

/** More evenings than all scenarios of a course that a clinic would write have; a guard against ones made to be slow. */
const mostEvenings = 50_000;

/**
 * Every scenario that can be kept, the likeliest first: as few decisions taken as may be, then lengths nearest the middle
 * of their ranges. Null where there is too much to look at.
 */
export function solve(
  model: CourseModel,
  scenarios: readonly Scenario[],
  agenda: Agenda,
  agreed: Agreed,
): Solved[] | null {
  const days = daysOf(agenda, agreed);
  const solved: Solved[] = [];
  let room = mostEvenings;
  for (const scenario of scenarios) {
    const graph = dayGraph(model, scenario, days, room);
    if (!graph) return null;
    for (const layer of graph.layers) room -= layer.length;
    if (graph.layers.length > 0) solved.push({ scenario, graph, best: bestSchedule(graph) });
  }
  return solved.sort(({ scenario: a }, { scenario: b }) => a.taken - b.taken || a.far - b.far);
}

/** A booked day is used, whatever the calendar says: what is wrong with it has been told already. */
function daysOf(agenda: Agenda, { booked, fixed }: Agreed): Days {
  const taken = new Set(booked);
  const price = (day: number) => {
    if (taken.has(day)) return 0;
    if (!agenda.usable(day)) return Number.POSITIVE_INFINITY;
    return agenda.on(day).partner === null ? 0 : 1;
  };
  return {
    use: once((day: number): DayUse => ({ price: price(day), booked: taken.has(day) })),
    nextUsable: once((from: number) => Math.min(agenda.nextUsable(from), ...booked.filter((day) => day >= from))),
    lastBooked: Math.max(0, ...booked),
    fixed,
  };
}

/** Works each day out once. */
function once<T>(work: (day: number) => T): (day: number) => T {
  const known = new Map<number, T>();
  return (day) => {
    const found = known.get(day) ?? work(day);
    known.set(day, found);
    return found;
  };
}
