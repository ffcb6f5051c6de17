import type { LocalTime } from "../facts.js";
import { dayAfter, dayOf, hoursBetween, localTime } from "./clock.js";
import type { Slot } from "./slots.js";

export type Timed = { at: LocalTime; slot: Slot };

/** Two doses are never nearer than this share of the interval; common practice, no source. */
export const leastGap = 3 / 4;

/**
 * The household time for the dose after one that was given: the time nearest to one interval later, never nearer than three
 * quarters of it, and after `notBefore`, which is not before `given`. What is as near on both sides is given earlier.
 */
export function nextTime(
  given: LocalTime,
  hours: number,
  slots: readonly Slot[],
  zone: string,
  notBefore: LocalTime = given,
): Timed {
  const days = Array.from({ length: Math.ceil(hours / 24) + 2 }, (_, i) => dayAfter(dayOf(notBefore), i));
  const candidates = days
    .flatMap((day) => slots.map((slot) => ({ at: localTime(day, slot.at, zone), slot })))
    .filter(({ at }) => at > notBefore)
    .map((timed) => ({ ...timed, wait: hoursBetween(given, timed.at, zone) }))
    .filter(({ wait }) => wait >= hours * leastGap)
    .sort((a, b) => Math.abs(a.wait - hours) - Math.abs(b.wait - hours) || a.wait - b.wait);
  const [soonest] = candidates;
  if (!soonest) throw new RangeError(`no time of day in ${slots.length} slots`);
  return { at: soonest.at, slot: soonest.slot };
}
