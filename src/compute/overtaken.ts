import type { Plan } from "#plan/plan.js";
import { placeOf } from "#problems/place.js";
import { type Problem, problem } from "#problems/problem.js";
import type { Tables } from "#tables/tables.js";
import type { VisitKind } from "#tables/visits.js";
import { bandageOff, isOfBandage } from "./bandage-off.js";
import type { Care } from "./facts.js";
import { kindNamed } from "./visits/done.js";

/**
 * What a plan still tells of, and a visit has put an end to: an open wound that was closed, a bandage or a drain that came out. A
 * page would say what is not so. Problems: "wound-told-open", "bandage-told-on", "care-told-on".
 */
export function overtaken(plan: Plan, care: readonly Care[], tables: Tables): Problem[] {
  return [...toldOpen(plan, care, tables), ...toldOn(plan, tables), ...toldAfter(plan, care, tables)];
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
  const idsOf = kindsBy(kinds);
  const last = done.findLast(({ visit }) => isOfBandage(idsOf(visit)));
  const off = last ? bandageOff(care, idsOf(last.visit)) : null;
  if (!last || off === null) return [];
  return [problem("bandage-told-on", placeOf(places, "care", off, "bandage"), { day: { day: last.at.slice(0, 10) } })];
}

/** What a topic is about has come out: a drain, a feeding tube, a strip of gauze, a splint. */
function toldAfter(
  { done, places }: Plan,
  care: readonly Care[],
  { care: { topics }, visits: kinds }: Tables,
): Problem[] {
  const idsOf = kindsBy(kinds);
  return care.flatMap(({ topic }, i) => {
    const ending = topics.find(({ id }) => id === topic)?.overAfter;
    const last = ending && done.findLast(({ visit }) => idsOf(visit).includes(ending));
    if (!last) return [];
    const values = { topic, visit: ending, day: { day: last.at.slice(0, 10) } };
    return [problem("care-told-on", placeOf(places, "care", i, "topic"), values)];
  });
}

/** The kinds of visit that words name, as ids. */
const kindsBy = (kinds: readonly VisitKind[]) => (words: readonly string[]) =>
  words.flatMap((one) => kindNamed(one, kinds)?.id ?? []);
