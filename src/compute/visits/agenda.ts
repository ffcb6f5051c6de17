import type { Plan } from "#plan/plan.js";
import type { VisitKind } from "#tables/visits.js";
import { type ClinicDay, clinicDays } from "../calendar/clinic-days.js";
import { clinicianOf } from "../calendar/clinician.js";
import { dayOf, numberOf } from "../calendar/day-numbers.js";
import type { Minutes } from "../calendar/minutes.js";
import { type Slot, startsOn, visitMinutes } from "../calendar/opening.js";
import type { Day } from "../facts.js";

/** The clinic's days by their number after discharge, which is day 0. */
export type Agenda = {
  dayOf: (number: number) => Day;
  numberOf: (day: Day) => number;
  on: (number: number) => ClinicDay;
  /** The case's clinician is there, or no days are known of one. */
  isIn: (number: number) => boolean;
  /** The days on which a visit can be, by what it is for and at what times it may begin. */
  reach: (kind: VisitKind, slot: Slot) => Reach;
  /** Those of a visit that may be for anything, at any time. */
  anyReach: Reach;
};

/** The days on which one visit can be: somebody can see the animal, the right one, and the owner can come. */
export type Reach = {
  /** The clinician it waits for. */
  clinician: string | null;
  usable: (number: number) => boolean;
  /** When it can begin that day. */
  starts: (number: number) => Minutes[];
  /** The first usable day from a day on; infinite where there is none within farthest days. */
  nextUsable: (from: number) => number;
  /** The usable day nearest to a stretch of days, the later of two; null where there is none near. */
  nearestTo: (from: number, to: number) => number | null;
};

/** No closure is longer; a clinic closed for more has no next day to offer. */
const farthest = 90;
const around = Array.from({ length: farthest }, (_, i) => i);

export function agendaOf(plan: Plan, kinds: readonly VisitKind[]): Agenda {
  const discharged = plan.discharged.slice(0, 10);
  const clinician = clinicianOf(plan, kinds);
  const day = clinicDays(plan);
  const written = known((number: number) => dayOf(discharged, number));
  const on = known((number: number) => day(written(number)));
  // Where the partner stands in, our clinician is not there.
  const isIn = known((number: number) => on(number).partner === null && (clinician?.isIn(written(number)) ?? true));
  const reaches = new Map<string, Reach>();

  const reach = (slot: Slot, minutes: number, waitsFor: string | null): Reach => {
    const name = [slot.from, slot.to, minutes, waitsFor].join();
    const before = reaches.get(name);
    if (before) return before;
    const starts = known((number: number) => {
      if (waitsFor && !isIn(number)) return [];
      return startsOn(plan, on(number), slot, minutes);
    });
    const now = reachOf(starts, waitsFor);
    reaches.set(name, now);
    return now;
  };

  return {
    dayOf: written,
    numberOf: (day) => numberOf(discharged, day),
    on,
    isIn,
    reach: (kind, slot) =>
      reach(slot, kind.minutes ?? visitMinutes(plan), clinician?.kinds.has(kind.id) ? clinician.name : null),
    anyReach: reach({ from: null, to: null }, visitMinutes(plan), null),
  };
}

function reachOf(starts: (number: number) => Minutes[], clinician: string | null): Reach {
  const usable = (number: number) => starts(number).length > 0;
  return {
    clinician,
    usable,
    starts,
    nextUsable: known((from) => from + (around.find((far) => usable(from + far)) ?? Number.POSITIVE_INFINITY)),
    nearestTo(from, to) {
      for (const far of around) {
        if (usable(to + far)) return to + far;
        if (from - far > 0 && usable(from - far)) return from - far;
      }
      return null;
    },
  };
}

/** Works each day out once. */
function known<T>(work: (day: number) => T): (day: number) => T {
  const found = new Map<number, T>();
  return (day) => {
    const before = found.get(day);
    if (before !== undefined) return before;
    const now = work(day);
    found.set(day, now);
    return now;
  };
}
