import { eachDayOfInterval, formatISO, parseISO } from "date-fns";
import type { Certainty, Day, Facts, Visit } from "#compute/facts.js";
import type { DayMark } from "#handout/handout.js";

export type Mark = DayMark["mark"];

/** Strongest first: a day shows the firmest thing that may happen on it. */
const firmness: Certainty[] = ["booked", "expected", "possible"];

export const markOrder: Mark[] = ["discharge", "booked", "expected", "possible", "closed"];

const isoDay = (date: Date): Day => formatISO(date, { representation: "date" });

/** Every day from the first to the last, both included. */
export const daysFrom = (first: Day, last: Day): Day[] =>
  eachDayOfInterval({ start: parseISO(first), end: parseISO(last) }).map(isoDay);

/** The days the course spans: from going home to the last day on which a visit may fall. */
export function courseDays({ discharged, course }: Pick<Facts, "discharged" | "course">): Day[] {
  const first = discharged.slice(0, 10);
  const last =
    course.visits
      .map(({ latest }) => latest)
      .toSorted()
      .at(-1) ?? first;
  return daysFrom(first, last);
}

/** What a decision may yet spare is expected until then. */
const markOf = ({ certainty, unless }: Visit): Certainty => (unless ? "expected" : certainty);

/** What each day of the course is marked with. An expected or possible visit marks every day it may fall on. */
export function dayMarks({ discharged, course }: Pick<Facts, "discharged" | "course">): Map<Day, Mark[]> {
  const closed = new Set(course.closed.map(({ day }) => day));
  const firmest = new Map<Day, Mark>();
  for (const certainty of firmness)
    for (const day of course.visits.filter((visit) => markOf(visit) === certainty).flatMap(({ days }) => days))
      if (!firmest.has(day)) firmest.set(day, certainty);

  const home = discharged.slice(0, 10);
  const days = new Set([home, ...firmest.keys(), ...closed]);
  return new Map(
    [...days].map((day) => {
      const visit = firmest.get(day);
      const marks: Mark[] = [
        ...(day === home ? ["discharge" as const] : []),
        ...(visit ? [visit] : []),
        ...(closed.has(day) ? ["closed" as const] : []),
      ];
      return [day, marks];
    }),
  );
}
