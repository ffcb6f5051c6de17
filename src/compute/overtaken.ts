import type { Plan } from "#plan/plan.js";
import { placeOf } from "#problems/place.js";
import { type Problem, problem } from "#problems/problem.js";
import type { Tables } from "#tables/tables.js";
import { bandageOff, isOfBandage } from "./bandage-off.js";
import type { Care } from "./facts.js";
import { kindNamed } from "./visits/done.js";

/**
 * What a plan still tells of, and a visit has put an end to: an open wound that was closed, a bandage that was taken off. A page
 * would say what is not so. Problems: "wound-told-open", "bandage-told-on".
 */
export function overtaken(plan: Plan, care: readonly Care[], tables: Tables): Problem[] {
  return [...toldOpen(plan, care, tables), ...toldOn(plan, tables)];
}

function toldOpen({ done, places }: Plan, care: readonly Care[], { care: { topics } }: Tables): Problem[] {
  const close = done.findLast(({ decided }) => decided === "close");
  const closedAs = (one: Care) => topics.find(({ id }) => id === one.topic)?.onceClosed;
  const isClosed = care.some(({ topic }) => topics.some(({ onceClosed }) => onceClosed === topic));
  if (!close || isClosed) return [];
  return care.flatMap((one, i) => {
    const closed = closedAs(one);
    const values = { topic: one.topic, closed: closed ?? "", day: { day: close.at.slice(0, 10) } };
    return closed ? [problem("wound-told-open", placeOf(places, "care", i, "topic"), values)] : [];
  });
}

function toldOn({ done, care, places }: Plan, { visits: kinds }: Tables): Problem[] {
  const idsOf = (visit: readonly string[]) => visit.flatMap((words) => kindNamed(words, kinds)?.id ?? []);
  const last = done.findLast(({ visit }) => isOfBandage(idsOf(visit)));
  const off = last ? bandageOff(care, idsOf(last.visit)) : null;
  if (!last || off === null) return [];
  return [problem("bandage-told-on", placeOf(places, "care", off, "bandage"), { day: { day: last.at.slice(0, 10) } })];
}
