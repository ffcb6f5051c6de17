import type { Plan } from "#plan/plan.js";
import type { Clock } from "../facts.js";
import type { ClinicDay } from "./clinic-days.js";

/** How long a visit takes where neither its kind nor the clinic says so; common practice, no source. */
const usualMinutes = 20;

const minutesOf = ({ value, unit }: { value: string; unit: string }) => Number(value) * (unit === "h" ? 60 : 1);

/** How many minutes any visit of the clinic takes unless its kind says otherwise. */
export const visitMinutes = ({ clinic }: Plan): number => (clinic.visit ? minutesOf(clinic.visit) : usualMinutes);

/** Minutes after midnight of "09:30", and back. */
const sinceMidnight = (clock: Clock) => Number(clock.slice(0, 2)) * 60 + Number(clock.slice(3));
const clockAt = (minutes: number): Clock =>
  [Math.floor(minutes / 60), minutes % 60].map((part) => String(part).padStart(2, "0")).join(":");

/** Whether a visit may begin at a time of an open day, and if not, what the day's hours or its last beginning are. */
export function beginsInHours(
  plan: Plan,
  { hours }: ClinicDay,
  time: Clock,
): { fits: true } | { fits: false; open: string } | { fits: false; last: Clock } {
  const stretch = hours.find(({ open, close }) => open <= time && time < close);
  if (!stretch) return { fits: false, open: hours.map(({ open, close }) => `${open}-${close}`).join(", ") };
  const lastAppointment = plan.clinic["last appointment"];
  const before = lastAppointment ? minutesOf(lastAppointment) : visitMinutes(plan);
  const last = sinceMidnight(stretch.close) - before;
  return sinceMidnight(time) <= last ? { fits: true } : { fits: false, last: clockAt(Math.max(0, last)) };
}
