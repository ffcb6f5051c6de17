import type { Plan } from "#plan/plan.js";
import { type ClinicDay, clinicDays } from "../calendar/clinic-days.js";
import { dayOf, numberOf } from "../calendar/day-numbers.js";
import type { Day } from "../facts.js";

/** The clinic's days by their number after discharge, which is day 0. */
export type Agenda = {
  dayOf: (number: number) => Day;
  numberOf: (day: Day) => number;
  on: (number: number) => ClinicDay;
  /** Somebody can see the animal, and the owner can come. */
  usable: (number: number) => boolean;
  /** The first usable day from a day on; infinite where there is none within farthest days. */
  nextUsable: (from: number) => number;
  /** The usable day nearest to a stretch of days, the later of two; null where there is none near. */
  nearestTo: (from: number, to: number) => number | null;
};

/** No closure is longer; a clinic closed for more has no next day to offer. */
const farthest = 90;

export function agendaOf(plan: Plan): Agenda {
  const discharged = plan.discharged.slice(0, 10);
  const day = clinicDays(plan);
  const numbers = new Map<number, ClinicDay>();
  const on = (number: number): ClinicDay => {
    const found = numbers.get(number) ?? day(dayOf(discharged, number));
    numbers.set(number, found);
    return found;
  };
  const usable = (number: number) => on(number).hours.length > 0 && !on(number).away;
  const around = Array.from({ length: farthest }, (_, i) => i);
  return {
    dayOf: (number) => dayOf(discharged, number),
    numberOf: (written) => numberOf(discharged, written),
    on,
    usable,
    nextUsable: (from) => from + (around.find((far) => usable(from + far)) ?? Number.POSITIVE_INFINITY),
    nearestTo(from, to) {
      for (const far of around) {
        if (usable(to + far)) return to + far;
        if (from - far > 0 && usable(from - far)) return from - far;
      }
      return null;
    },
  };
}
