import type { Plan } from "#plan/plan.js";
import { type Place, placeOf } from "#problems/place.js";
import { type Problem, problem } from "#problems/problem.js";
import { sinceMidnight } from "../calendar/minutes.js";
import { beginsInHours, visitMinutes } from "../calendar/opening.js";
import type { LocalTime } from "../facts.js";
import type { Agenda } from "./agenda.js";
import { closedDay } from "./closed-day.js";

/** An appointment already agreed, on a day after discharge. */
export type Booking = { number: number; at: LocalTime; index: number };

/** The appointments of a plan by day, and what is wrong with any as it stands, before the course is looked at. */
export function readBooked(plan: Plan, agenda: Agenda): { bookings: Map<number, Booking>; problems: Problem[] } {
  const bookings = new Map<number, Booking>();
  const problems: Problem[] = [];
  for (const [index, at] of plan.booked.entries()) {
    const place = placeOf(plan.places, "booked", index);
    const day = at.slice(0, 10);
    const number = agenda.numberOf(day);
    if (at <= plan.discharged) {
      problems.push(problem("date-past", place, { given: { day }, discharged: { day: plan.discharged.slice(0, 10) } }));
    } else if (bookings.has(number)) {
      problems.push(problem("booked-twice", place, { day: { day } }));
    } else {
      problems.push(...checkTime(plan, agenda, number, at, place));
      bookings.set(number, { number, at, index });
    }
  }
  return { bookings, problems };
}

function checkTime(plan: Plan, agenda: Agenda, number: number, at: LocalTime, place: Place): Problem[] {
  const day = agenda.on(number);
  if (day.hours.length === 0) return [closedDay(agenda, agenda.anyReach, number, place)];
  const given = at.replace("T", " ");
  const begins = beginsInHours(plan, day, at.slice(11));
  const problems: Problem[] = [];
  if ("open" in begins) problems.push(problem("booked-outside-hours", place, { given, open: begins.open }));
  if ("last" in begins) problems.push(problem("booked-after-last-appointment", place, { given, last: begins.last }));
  const start = sinceMidnight(at.slice(11));
  if (day.away.some(({ from, to }) => start < to && start + visitMinutes(plan) > from))
    problems.push(problem("booked-when-owner-cannot-come", place, { day: { day: at.slice(0, 10) } }));
  return problems;
}
