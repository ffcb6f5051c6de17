import { addDays, eachDayOfInterval, format, parseISO } from "date-fns";
import type { LogRow } from "#tables/log.js";
import type { Collar, Course, Day, HomeLog, LocalTime, Medicine, Statement } from "./facts.js";

/** A fortnight; at each visit a new paper brings a new log. */
const mostDays = 14;
/** Where no visit and no dose says how long: a week. */
const daysAlone = 7;

type Said = {
  discharged: LocalTime;
  statements: Statement[];
  medicines: Medicine[];
  course: Course;
  collar: Collar | null;
};

/** What an owner writes down each day from the discharge to the next visits, with the rows this case needs and no others. */
export function homeLog(said: Said, rows: readonly LogRow[]): HomeLog {
  const ids = new Set(said.statements.map(({ id }) => id));
  const days = daysOf(said);
  return {
    days,
    rows: rows
      .filter(({ for: any }) => !any || any.some((id) => ids.has(id)))
      .filter(({ unless }) => !unless?.some((id) => ids.has(id)))
      .map((row) => ({ id: row.id, write: row.write, days: daysAsked(row, days, said) }))
      .filter((row) => row.days.length > 0),
  };
}

/** Not asked: of the day before on the first day, of medicines where none is given, of a collar that is off. */
function daysAsked({ needs, compares }: LogRow, all: Day[], { medicines, collar }: Said): Day[] {
  const days = compares ? all.slice(1) : all;
  if (needs === "collar") return collar ? days.filter((day) => !collar.until.day || day <= collar.until.day) : [];
  if (needs !== "medicines") return days;
  const given = new Set(medicines.flatMap(({ doses }) => doses.map(({ at }) => at.slice(0, 10))));
  return days.filter((day) => given.has(day));
}

/** To the last visit that is booked; else to the first that will come; else to the last dose. */
function daysOf({ discharged, course, medicines }: Said): Day[] {
  const start = parseISO(discharged.slice(0, 10));
  const later = (days: number) => format(addDays(start, days), "yyyy-MM-dd");
  const booked = course.visits.flatMap(({ certainty, latest }) => (certainty === "booked" ? latest : []));
  const expected = course.visits.flatMap(({ certainty, latest }) => (certainty === "expected" ? latest : []));
  const doses = medicines.flatMap(({ last }) => last?.slice(0, 10) ?? []);
  const last = booked.sort().at(-1) ?? expected.sort()[0] ?? doses.sort().at(-1) ?? later(daysAlone - 1);
  const end = [last, later(mostDays - 1)].sort()[0] ?? last;
  return eachDayOfInterval({ start, end: parseISO(end) }).map((date) => format(date, "yyyy-MM-dd"));
}
