import { differenceInCalendarDays, parseISO } from "date-fns";
import { placeOf } from "#problems/place.js";
import { type Problem, problem } from "#problems/problem.js";
import type { Plan } from "../plan.js";

/** A plan is printed on the day, or the day after a late night; a year mistyped would move every date on the page. */
const daysOfGrace = 2;

export function checkDischargeDay({ discharged, places }: Plan, today: string): Problem[] {
  const day = discharged.slice(0, 10);
  if (Math.abs(differenceInCalendarDays(parseISO(day), parseISO(today))) <= daysOfGrace) return [];
  return [
    problem("discharge-not-today", placeOf(places, "discharged"), { discharged: { day }, today: { day: today } }),
  ];
}
