import type { Place } from "#problems/place.js";
import { type Problem, problem } from "#problems/problem.js";
import type { Agenda } from "./agenda.js";

/** Tells that nobody can be seen on a day: which closure or whose absence it is, and the nearest day that would do. */
export function closedDay(agenda: Agenda, number: number, at: Place): Problem {
  const { closed } = agenda.on(number);
  const values = { day: { day: agenda.dayOf(number) }, nearest: { day: nearestDay(agenda, number, number) } };
  if (!closed) return problem("owner-cannot-come", at, values);
  if (closed.name) return problem("closed-for", at, { ...values, closure: closed.name });
  return problem("closed-day", at, values);
}

/** Tells the same of a stretch of days, naming the first closure that has a name. */
export function closedWindow(agenda: Agenda, from: number, to: number, at: Place): Problem {
  if (from === to) return closedDay(agenda, from, at);
  const values = {
    from: { day: agenda.dayOf(from) },
    to: { day: agenda.dayOf(to) },
    nearest: { day: nearestDay(agenda, from, to) },
  };
  for (let number = from; number <= to; number++) {
    const closure = agenda.on(number).closed?.name;
    if (closure) return problem("no-open-day-for", at, { ...values, closure });
  }
  return problem("no-open-day", at, values);
}

const nearestDay = (agenda: Agenda, from: number, to: number) => agenda.dayOf(agenda.nearestTo(from, to) ?? to);
