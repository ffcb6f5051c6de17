import type { CourseModel } from "./course.js";
import type { Row } from "./rows.js";
import type { Step } from "./schedule/graph.js";
import type { Cut } from "./schedule/slots.js";

/** Rows that share one trip, and the days on which they can. booked: the agreed day, where there is one. */
export type Trip = { rows: Row[]; days: number[]; ideal: number; booked: number | null };

/**
 * Joins rows into trips. What is done on a booked day is one trip. Other rows share a trip where the best schedule puts
 * them on one day, they are equally sure, and sharing holds however the wound goes. likely: the best schedule.
 */
export function tripsOf(
  model: CourseModel,
  rows: readonly Row[],
  likely: readonly Step[],
  booked: readonly number[],
  cut: Cut,
): Trip[] {
  const trips: Trip[] = [];
  const dayOf = bookedDays(rows, likely, booked, cut);
  for (const row of rows) {
    const day = dayOf(row);
    if (day !== null) {
      const same = trips.find((trip) => trip.booked === day);
      if (same) same.rows.push(row);
      else trips.push({ rows: [row], days: [day], ideal: day, booked: day });
      continue;
    }
    const joined = trips.flatMap((trip) => {
      const days = sharedDays(model, trip, row);
      return days.length > 0 ? [{ trip, days }] : [];
    })[0];
    if (joined) Object.assign(joined.trip, { rows: [...joined.trip.rows, row], days: joined.days });
    else trips.push(alone(row));
  }
  return trips.flatMap((trip) => (trip.booked === null ? [trip] : agreed(trip, likely)));
}

const alone = (row: Row): Trip => ({ rows: [row], days: sorted(row.days), ideal: row.ideal, booked: null });

const sorted = (days: Iterable<number>) => [...days].sort((a, b) => a - b);

/**
 * The booked day of a row, if it has one: the only day it can fall on; or, where what is done on a booked day hangs on how
 * the wound goes, the single visits that the likeliest course puts there.
 */
function bookedDays(rows: readonly Row[], likely: readonly Step[], booked: readonly number[], cut: Cut) {
  const sure = new Set(rows.map((row) => bookedOn(row, booked, cut)));
  const open = likely.filter(({ day }) => booked.includes(day) && !sure.has(day));
  const settled = new Map(open.flatMap(({ day, done }) => done.map(({ item }): [number, number] => [item, day])));
  return (row: Row): number | null =>
    bookedOn(row, booked, cut) ?? (row.item < cut.singles ? (settled.get(row.item) ?? null) : null);
}

/** The booked day a row falls on, if it can fall on no other. */
function bookedOn({ days, item, stretch }: Row, booked: readonly number[], cut: Cut): number | null {
  const [day] = days;
  const only = days.size === 1 && day !== undefined && booked.includes(day);
  return only && (item < cut.singles || cut.stretch(day) === stretch) ? day : null;
}

/**
 * The days a row can share with a trip; none where it cannot. A row whose day is ours to choose follows the others as
 * long as each of their days suits it; two whose days are not ours share only a day neither can leave, or the same wait.
 */
function sharedDays(model: CourseModel, trip: Trip, row: Row): number[] {
  const [first] = trip.rows;
  if (!first || !alike(first, row) || trip.booked !== null) return [];
  const common = trip.days.filter((day) => row.days.has(day));
  const tripIsFree = trip.rows.every((one) => isFree(model, one));
  if (tripIsFree && isFree(model, row)) return common;
  if (isFree(model, row)) return common.length === trip.days.length ? common : [];
  if (tripIsFree) return common.length === row.days.size ? common : [];
  const sameDay = trip.days.length === 1 && row.days.size === 1;
  return sameDay || waitAlike(model, first, row) ? common : [];
}

/** Equally sure, and on one day if all goes well. */
const alike = (a: Row, b: Row): boolean =>
  a.ideal === b.ideal && a.always === b.always && a.dependsOn === b.dependsOn && a.unless === b.unless;

/** Its day is ours to choose within its window: it waits for no visit, and none waits for it. */
function isFree({ onces, runs }: CourseModel, { item }: Row): boolean {
  const once = onces[item];
  if (!once || once.after !== null) return false;
  const waited = onces.some(({ after }) => after === item);
  return (
    !waited &&
    !runs.some(({ phases }) => phases.some(({ until, first }) => until.onces.includes(item) || first?.after === item))
  );
}

/** Both come the same number of days after the same visit. */
function waitAlike({ onces }: CourseModel, a: Row, b: Row): boolean {
  const [one, other] = [onces[a.item], onces[b.item]];
  if (!one || !other || one.after === null || one.after !== other.after) return false;
  return one.when.value.from === other.when.value.from && one.when.value.to === other.when.value.to;
}

/** Of all that might be done on a booked day, what will be, or what the likeliest course does; the rest each for itself. */
function agreed(trip: Trip, likely: readonly Step[]): Trip[] {
  const done = likely.find(({ day }) => day === trip.booked)?.done ?? [];
  const rows = trip.rows.filter(({ always, item }) => always || done.some((one) => one.item === item));
  if (rows.length === 0) return [trip];
  return [{ ...trip, rows }, ...trip.rows.filter((row) => !rows.includes(row)).map(alone)];
}
