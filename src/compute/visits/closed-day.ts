import type { Place } from "#problems/place.js";
import { type Problem, problem } from "#problems/problem.js";
import type { Agenda, Reach } from "./agenda.js";
import type { Span } from "./language/line.js";

/**
 * Tells why a visit cannot be on a day: which closure or whose absence it is, and the nearest day that would do. near: that
 * day, where more decides it than who is there; null where no day for months will do.
 */
export function closedDay(
  agenda: Agenda,
  reach: Reach,
  number: number,
  at: Place,
  near = reach.nearestTo(number, number),
): Problem {
  const { closed, hours, away } = agenda.on(number);
  const day = agenda.dayOf(number);
  if (near === null) return problem("no-day-near", at, { day: { day } });
  const values = { day: { day }, nearest: { day: agenda.dayOf(near) } };
  if (hours.length === 0 && closed?.name) return problem("closed-for", at, { ...values, closure: closed.name });
  if (hours.length === 0) return problem("closed-day", at, values);
  if (reach.clinician && !agenda.isIn(number))
    return problem("clinician-away", at, { ...values, clinician: reach.clinician });
  return away.length > 0 ? problem("owner-cannot-come", at, values) : problem("no-time-in-slot", at, values);
}

/** Tells the same of a stretch of days, naming the first closure that has a name. */
export function closedWindow(
  agenda: Agenda,
  reach: Reach,
  { from, to }: Span,
  at: Place,
  near = reach.nearestTo(from, to),
): Problem {
  if (from === to || near === null) return closedDay(agenda, reach, from, at, near);
  const on = (number: number) => ({ day: agenda.dayOf(number) });
  const values = { from: on(from), to: on(to), nearest: on(near) };
  for (let number = from; number <= to; number++) {
    const closure = agenda.on(number).closed?.name;
    if (closure) return problem("no-open-day-for", at, { ...values, closure });
  }
  return problem("no-open-day", at, values);
}
