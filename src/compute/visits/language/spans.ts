import { differenceInCalendarDays, isValid, parseISO } from "date-fns";
import { problem } from "#problems/problem.js";
import { dayOf } from "../../calendar/day-numbers.js";
import type { Cursor } from "./cursor.js";
import type { Said, Span } from "./line.js";

/** A course reaches at most a year ahead; a visit farther off belongs to another plan. */
export const mostDays = 366;
const mostTimes = 100;

const unitDays: Record<string, number> = { day: 1, days: 1, week: 7, weeks: 7 };

/** "3-5", "3 to 5", "3 or 4", "3". */
function takeRange(cursor: Cursor): Span | null {
  const start = cursor.position();
  const from = cursor.takeNumber();
  if (from === null) return null;
  const afterFirst = cursor.position();
  const to = cursor.takeOneOf("-", "to", "or") ? cursor.takeNumber() : null;
  if (to === null) cursor.moveTo(afterFirst);
  const last = to ?? from;
  if (last < from) cursor.fail(problem("course-range-backwards", cursor.said(start, null).at, { from, to: last }));
  return { from, to: last };
}

function bounded(cursor: Cursor, span: Said<Span>, least: number, most: number): Said<Span> {
  if (span.value.from < least || span.value.to > most)
    cursor.fail(problem("course-number-out", span.at, { given: span.text, least, most }));
  return span;
}

/** "3-5 days", "2 weeks", in days; null and no step taken where something else stands. */
export function takeDays(cursor: Cursor, least = 1): Said<Span> | null {
  const start = cursor.position();
  const range = takeRange(cursor);
  const unit = unitDays[cursor.peek()?.text ?? ""];
  if (!range || !unit) {
    cursor.moveTo(start);
    return null;
  }
  cursor.moveTo(cursor.position() + 1);
  return bounded(cursor, cursor.said(start, { from: range.from * unit, to: range.to * unit }), least, mostDays);
}

/** Days that must be later than the day they count from. */
export const afterTheDay = (cursor: Cursor, span: Said<Span>): Said<Span> => bounded(cursor, span, 1, mostDays);

/** "4-6 times". */
export function takeTimes(cursor: Cursor): Said<Span> | null {
  const start = cursor.position();
  const range = takeRange(cursor);
  if (!range || !cursor.takeOneOf("times", "time", "x")) {
    cursor.moveTo(start);
    return null;
  }
  return bounded(cursor, cursor.said(start, range), 1, mostTimes);
}

/** A day or a stretch of days: "tomorrow", "day 10-14", "in 2 weeks", "on 2026-03-12". discharged is day 0. */
export function takeDay(cursor: Cursor, discharged: string): Said<Span> | null {
  const start = cursor.position();
  const span = takeRelative(cursor) ?? takeDates(cursor, discharged);
  if (!span) {
    cursor.moveTo(start);
    return null;
  }
  const said = cursor.said(start, span);
  if (span.from < 1) cursor.fail(problem("course-day-not-after-discharge", said.at, { given: said.text }));
  return bounded(cursor, said, 1, mostDays);
}

function takeRelative(cursor: Cursor): Span | null {
  if (cursor.take("tomorrow")) return { from: 1, to: 1 };
  if (takeToday(cursor)) return { from: 0, to: 0 };
  if (cursor.takeOneOf("day", "days")) return takeRange(cursor) ?? cursor.lost("a number");
  if (cursor.take("in")) return takeDays(cursor)?.value ?? cursor.lost("3 days", "2 weeks");
  return null;
}

/** Understood, to say that it is no day for a visit, and so never offered as a word that could stand here. */
function takeToday(cursor: Cursor): boolean {
  const isToday = cursor.peek()?.text === "today";
  if (isToday) cursor.moveTo(cursor.position() + 1);
  return isToday;
}

/** "on 2026-03-12", "2026-03-12 to 2026-03-14", "between 2026-03-12 and 2026-03-14". */
function takeDates(cursor: Cursor, discharged: string): Span | null {
  const start = cursor.position();
  const lead = cursor.takeOneOf("on", "between");
  const from = takeDate(cursor, discharged);
  if (from === null) return lead ? cursor.lost("2026-03-12") : null;
  const to = cursor.takeOneOf("-", "to", "and") ? (takeDate(cursor, discharged) ?? cursor.lost("2026-03-12")) : from;
  const on = (number: number) => ({ day: dayOf(discharged, number) });
  if (to < from)
    cursor.fail(problem("course-range-backwards", cursor.said(start, null).at, { from: on(from), to: on(to) }));
  return { from, to };
}

function takeDate(cursor: Cursor, discharged: string): number | null {
  const token = cursor.peek();
  if (token?.kind !== "day") return null;
  const start = cursor.position();
  cursor.moveTo(start + 1);
  const day = parseISO(token.text);
  if (!isValid(day)) cursor.fail(problem("course-day-unreadable", cursor.said(start, null).at, { given: token.text }));
  return differenceInCalendarDays(day, parseISO(discharged));
}
