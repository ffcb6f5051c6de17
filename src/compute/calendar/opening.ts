import type { Plan } from "#plan/plan.js";
import type { Clock } from "../facts.js";
import type { ClinicDay } from "./clinic-days.js";
import { clockAt, common, type Minutes, sinceMidnight } from "./minutes.js";

/** How long a visit takes where neither its kind nor the clinic says so; common practice, no source. */
const usualMinutes = 20;

const minutesOf = ({ value, unit }: { value: string; unit: string }) => Number(value) * (unit === "h" ? 60 : 1);

/** How many minutes any visit of the clinic takes unless its kind says otherwise. */
export const visitMinutes = ({ clinic }: Plan): number => (clinic.visit ? minutesOf(clinic.visit) : usualMinutes);

/** How long before closing the last visit may begin. */
const lastBefore = (plan: Plan): number =>
  plan.clinic["last appointment"] ? minutesOf(plan.clinic["last appointment"]) : visitMinutes(plan);

/** Whether a visit may begin at a time of an open day, and if not, what the day's hours or its last beginning are. */
export function beginsInHours(
  plan: Plan,
  { hours }: ClinicDay,
  time: Clock,
): { fits: true } | { fits: false; open: string } | { fits: false; last: Clock } {
  const stretch = hours.find(({ open, close }) => open <= time && time < close);
  if (!stretch) return { fits: false, open: hours.map(({ open, close }) => `${open}-${close}`).join(", ") };
  const last = sinceMidnight(stretch.close) - lastBefore(plan);
  return sinceMidnight(time) <= last ? { fits: true } : { fits: false, last: clockAt(Math.max(0, last)) };
}

/** The times of day at which a visit may be asked to begin: not before and not after; null for no such bound. */
export type Slot = { from: Clock | null; to: Clock | null };

/** When a visit of so many minutes can begin on a day: while somebody sees animals, in its slot, and the owner is free. */
export function startsOn(plan: Plan, { hours, away }: ClinicDay, { from, to }: Slot, minutes: number): Minutes[] {
  const slot = { from: from ? sinceMidnight(from) : 0, to: to ? sinceMidnight(to) : 24 * 60 };
  const open = hours.map(({ open, close }) => ({
    from: sinceMidnight(open),
    to: sinceMidnight(close) - lastBefore(plan),
  }));
  return away.reduce(
    (free, taken) =>
      common(free, [
        { from: 0, to: taken.from - minutes },
        { from: taken.to, to: 24 * 60 },
      ]),
    common(open, [slot]),
  );
}
