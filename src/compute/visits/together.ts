import { common, type Minutes } from "../calendar/minutes.js";
import type { Agenda, Reach } from "./agenda.js";
import type { CourseModel, Once, Phase } from "./course.js";
import type { Done } from "./schedule/graph.js";

/** When each visit of a course can be: by single visit, and by run and phase as written. */
export type Reaches = { onces: Reach[]; runs: Reach[][] };

export function reachesOf({ onces, runs }: CourseModel, agenda: Agenda): Reaches {
  const reachOf = ({ kind, slot }: Once | Phase) => agenda.reach(kind.value, slot);
  return { onces: onces.map(reachOf), runs: runs.map(({ phases }) => phases.map(reachOf)) };
}

/** Whether all of it can begin at one time of a day, and so on one trip. */
export function together({ onces, runs }: Reaches, day: number, done: readonly Done[]): boolean {
  const startsOf = ({ item, phase }: Done): Minutes[] =>
    (onces[item] ?? runs[item - onces.length]?.[phase])?.starts(day) ?? [];
  return done.map(startsOf).reduce(common).length > 0;
}
