import type { Agenda } from "./agenda.js";
import type { CourseModel, Once } from "./course.js";
import type { Row } from "./rows.js";
import type { Step } from "./schedule/graph.js";
import { reachesOf, together } from "./together.js";

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
  agenda: Agenda,
): Trip[] {
  const trips: Trip[] = [];
  const dayOf = bookedDays(rows, likely, booked);
  const reaches = reachesOf(model, agenda);
  const oneTrip = (day: number, rows: Row[]) => booked.includes(day) || together(reaches, day, rows);
  for (const row of rows) {
    const day = dayOf(row);
    if (day !== null) {
      const same = trips.find((trip) => trip.booked === day);
      if (same) same.rows.push(row);
      else trips.push({ rows: [row], days: [day], ideal: day, booked: day });
      continue;
    }
    const joined = trips.flatMap((trip) => {
      const days = sharedDays(model, trip, row, oneTrip);
      return days.length > 0 ? [{ trip, days }] : [];
    })[0];
    if (joined) Object.assign(joined.trip, { rows: [...joined.trip.rows, row], days: joined.days });
    else trips.push(alone(row));
  }
  return trips.flatMap((trip) => (trip.booked === null ? [trip] : agreed(trip, likely)));
}

const alone = (row: Row): Trip => ({ rows: [row], days: sorted(row.days), ideal: row.ideal, booked: null });

const sorted = (days: Iterable<number>) => [...days].sort((a, b) => a - b);

const doneOn = (likely: readonly Step[], day: number, item: number): boolean =>
  likely.some((step) => step.day === day && step.done.some((one) => one.item === item));

/**
 * The booked day of a row, if it has one: the only day it can fall on; or, where what is done on a booked day hangs on how
 * the wound goes, the single visits that the likeliest course puts there. A decision that the likeliest course does not
 * take is told beside the booked visit, never as part of it.
 */
function bookedDays(rows: readonly Row[], likely: readonly Step[], booked: readonly number[]) {
  const bookedOn = ({ days, item, dependsOn }: Row): number | null => {
    const [day] = days;
    if (day === undefined || days.size > 1 || !booked.includes(day)) return null;
    return dependsOn === null || doneOn(likely, day, item) ? day : null;
  };
  const sure = new Set(rows.map(bookedOn));
  const open = likely.filter(({ day }) => booked.includes(day) && !sure.has(day));
  const settled = new Map(open.flatMap(({ day, done }) => done.map(({ item }): [number, number] => [item, day])));
  return (row: Row): number | null => bookedOn(row) ?? settled.get(row.item) ?? null;
}

/**
 * The days a row can share with a trip; none where it cannot. A row whose day is ours to choose follows the others as
 * long as each of their days suits it; two whose days are not ours share only a day neither can leave, or the same wait
 * where one can follow the other.
 */
function sharedDays(
  model: CourseModel,
  trip: Trip,
  row: Row,
  oneTrip: (day: number, rows: Row[]) => boolean,
): number[] {
  const [first] = trip.rows;
  if (!first || !alike(first, row) || trip.booked !== null) return [];
  const common = trip.days.filter((day) => row.days.has(day) && oneTrip(day, [...trip.rows, row]));
  const rowFollows = common.length === trip.days.length;
  const tripFollows = common.length === row.days.size;
  const held = trip.rows.filter((one) => !isFree(model, one));
  const rowIsFree = isFree(model, row);
  if (held.length === 0) return rowIsFree || tripFollows ? common : [];
  if (rowIsFree) return rowFollows ? common : [];
  const sameDay = trip.days.length === 1 && row.days.size === 1;
  const sameWait = (rowFollows || tripFollows) && held.some((one) => waitAlike(model, one, row));
  return sameDay || sameWait ? common : [];
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

/** Both come the same number of days after the same visit, or one of them on the day of the other. */
function waitAlike({ onces }: CourseModel, a: Row, b: Row): boolean {
  const [one, other] = [onces[a.item], onces[b.item]];
  if (!one || !other) return false;
  const onDayOf = ({ after, when }: Once, { item }: Row) => after === item && when.value.to === 0;
  if (onDayOf(one, b) || onDayOf(other, a)) return true;
  if (one.after === null || one.after !== other.after) return false;
  return one.when.value.from === other.when.value.from && one.when.value.to === other.when.value.to;
}

/** Of all that might be done on a booked day, what will be, or what the likeliest course does; the rest each for itself. */
function agreed(trip: Trip, likely: readonly Step[]): Trip[] {
  const rows = trip.rows.filter(({ always, item }) => always || doneOn(likely, trip.ideal, item));
  if (rows.length === 0) return [trip];
  return [{ ...trip, rows }, ...trip.rows.filter((row) => !rows.includes(row)).map(alone)];
}
