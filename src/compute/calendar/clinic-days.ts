import type { Plan } from "#plan/plan.js";
import type { Clock, Day } from "../facts.js";
import { dateRange, weekdayOf, weekdays } from "./days.js";
import { holidaysIn } from "./holidays.js";
import { type Minutes, sinceMidnight } from "./minutes.js";

type Hours = { open: Clock; close: Clock }[];

/** Why the clinic is closed on a day; name is that of the closure or holiday, in the owner's language where known. */
export type Closed = { reason: "weekly" | "closure" | "holiday"; name: string | null };

/**
 * What a day is like. closed is null on a day our own clinic is open; hours are then its own, else the partner's.
 * away: when the owner cannot come.
 */
export type ClinicDay = { closed: Closed | null; hours: Hours; partner: string | null; away: Minutes[] };

const wholeDay: Minutes = { from: 0, to: 24 * 60 };

/** The clinic's days, each worked out once. A closure stands before a holiday, a holiday before the week. */
export function clinicDays(plan: Plan): (day: Day) => ClinicDay {
  const { clinic } = plan;
  const closures = clinic.closed.map(dateRange);
  const known = new Map<Day, ClinicDay>();
  const holidays = new Map<number, Map<Day, string>>();

  const holidayOn = (day: Day): string | undefined => {
    const year = Number(day.slice(0, 4));
    const inYear = holidays.get(year) ?? holidaysIn(plan, year);
    holidays.set(year, inYear);
    return inYear.get(day);
  };

  const closedOn = (day: Day, hours: Hours): Closed | null => {
    const closure = closures.find(({ from, to }) => from <= day && day <= to);
    if (closure) return { reason: "closure", name: closure.name };
    const holiday = holidayOn(day);
    if (holiday !== undefined) return { reason: "holiday", name: holiday };
    return hours.length === 0 ? { reason: "weekly", name: null } : null;
  };

  return (day) => {
    const before = known.get(day);
    if (before) return before;
    const weekday = weekdays[weekdayOf(day) - 1] ?? "sunday";
    const own = clinic.hours[weekday];
    const closed = closedOn(day, own);
    const partnerHours = (closed && clinic.partner?.hours[weekday]) ?? [];
    const one: ClinicDay = {
      closed,
      hours: closed ? partnerHours : own,
      partner: closed && clinic.partner && partnerHours.length > 0 ? clinic.partner.name : null,
      away: ownerAway(plan, day),
    };
    known.set(day, one);
    return one;
  };
}

function ownerAway({ unavailable }: Plan, day: Day): Minutes[] {
  const those = unavailable.filter(({ from, to, weekday }) =>
    from === null ? weekday === weekdayOf(day) : from <= day && day <= to,
  );
  return those.flatMap(({ hours }) =>
    hours.length === 0
      ? [wholeDay]
      : hours.map(({ open, close }) => ({ from: sinceMidnight(open), to: sinceMidnight(close) })),
  );
}
