import type { Place } from "#problems/place.js";
import { type Problem, problem } from "#problems/problem.js";
import type { Agenda, Reach } from "./agenda.js";

/** Tells why a visit cannot be on a day: which closure or whose absence it is, and the nearest day that would do. */
export function closedDay(agenda: Agenda, reach: Reach, number: number, at: Place): Problem {
  const { closed, hours, away } = agenda.on(number);
  const day = agenda.dayOf(number);
  const values = { day: { day }, nearest: { day: nearestDay(agenda, reach, number, number) } };
  if (hours.length === 0 && closed?.name) return problem("closed-for", at, { ...values, closure: closed.name });
  if (hours.length === 0) return problem("closed-day", at, values);
  if (reach.clinician && !agenda.isIn(number))
    return problem("clinician-away", at, { ...values, clinician: reach.clinician });
  return away.length > 0 ? problem("owner-cannot-come", at, values) : problem("no-time-in-slot", at, values);
}

/** Tells the same of a stretch of days, naming the first closure that has a name. */
export function closedWindow(agenda: Agenda, reach: Reach, from: number, to: number, at: Place): Problem {
  if (from === to) return closedDay(agenda, reach, from, at);
  const values = {
    from: { day: agenda.dayOf(from) },
    to: { day: agenda.dayOf(to) },
    nearest: { day: nearestDay(agenda, reach, from, to) },
  };
  for (let number = from; number <= to; number++) {
    const closure = agenda.on(number).closed?.name;
    if (closure) return problem("no-open-day-for", at, { ...values, closure });
  }
  return problem("no-open-day", at, values);
}

const nearestDay = (agenda: Agenda, reach: Reach, from: number, to: number) =>
  agenda.dayOf(reach.nearestTo(from, to) ?? to);
