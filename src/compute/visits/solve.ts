import type { Agenda, Reach } from "./agenda.js";
import type { CourseModel } from "./course.js";
import type { Scenario } from "./scenario.js";
import { bestSchedule, type WayAhead } from "./schedule/best.js";
import { dayGraph } from "./schedule/day-graph.js";
import { noEvenings } from "./schedule/evenings.js";
import type { DayGraph, Days, DayUse, Node, Step } from "./schedule/graph.js";
import type { VisitDays } from "./schedule/run-outlook.js";
import { reachesOf, together } from "./together.js";

/** One way the wound may go, all schedules that serve it, and the best of them. */
export type Solved = { scenario: Scenario; graph: DayGraph; best: Step[] };

/**
 * What is agreed: the days somebody comes, and the single visits already given one of them. slack: how many days out of its
 * window a single visit may be where there is no other way.
 */
export type Agreed = { booked: readonly number[]; fixed: ReadonlyMap<number, number>; slack: number };

export const nothingAgreed: Agreed = { booked: [], fixed: new Map(), slack: 0 };

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
  const days = daysOf(model, agenda, agreed);
  const [met, ways] = [noEvenings(), new Map<Node, WayAhead>()];
  const solved: Solved[] = [];
  let room = mostEvenings;
  for (const scenario of scenarios) {
    const graph = dayGraph(model, scenario, days, met, room);
    if (!graph) return null;
    for (const layer of graph.layers) room -= layer.length;
    if (graph.layers.length > 0) solved.push({ scenario, graph, best: bestSchedule(graph, ways) });
  }
  return solved.sort(({ scenario: a }, { scenario: b }) => a.taken - b.taken || a.far - b.far);
}

/** A booked day is used, whatever the calendar says: what is wrong with it has been told already. */
function daysOf(model: CourseModel, agenda: Agenda, { booked, fixed, slack }: Agreed): Days {
  const taken = new Set(booked);
  const withBooked = onceEach(
    ({ usable, nextUsable }: Reach): VisitDays => ({
      usable: (day) => taken.has(day) || usable(day),
      nextUsable: onceEach((from: number) => Math.min(nextUsable(from), ...booked.filter((day) => day >= from))),
    }),
  );
  const reaches = reachesOf(model, agenda);
  return {
    use: onceEach((day: number): DayUse => {
      const booked = taken.has(day);
      return { price: booked || agenda.on(day).partner === null ? 0 : 1, booked };
    }),
    onces: reaches.onces.map(withBooked),
    runs: reaches.runs.map((phases) => phases.map(withBooked)),
    together: (day, done) => taken.has(day) || together(reaches, day, done),
    lastBooked: Math.max(0, ...booked),
    fixed,
    slack,
  };
}

/** Works each thing out once. */
function onceEach<K, T>(work: (key: K) => T): (key: K) => T {
  const known = new Map<K, T>();
  return (key) => {
    const found = known.get(key) ?? work(key);
    known.set(key, found);
    return found;
  };
}
