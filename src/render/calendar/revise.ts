import { isDeepStrictEqual } from "node:util";
import type { Event } from "#handout/handout.js";

/**
 * The events of a calendar file that takes the place of one sent before (RFC 5546, 2.1.4 and 3.2.5): what is as it was keeps
 * its SEQUENCE, what has changed has a higher one, and what is no longer planned is cancelled. earlier: the events of the
 * file sent last, its cancelled ones too; now: those of the new handout. Events are the same visit where their UID is.
 * What was cancelled before, and is still not planned, is not told again.
 */
export function reviseEvents(earlier: readonly Event[], now: readonly Event[]): Event[] {
  const before = new Map(earlier.map((event) => [event.uid, event]));
  const kept = now.map((event): Event => {
    const old = before.get(event.uid);
    if (!old) return event;
    return { ...event, sequence: alike(old, event) ? old.sequence : Math.max(event.sequence, old.sequence + 1) };
  });
  const planned = new Set(now.map(({ uid }) => uid));
  const cancelled = earlier
    .filter(({ uid, status }) => !planned.has(uid) && status !== "cancelled")
    .map((event): Event => ({ ...event, status: "cancelled", sequence: event.sequence + 1, alarms: [] }));
  return [...kept, ...cancelled];
}

/** The same to an owner: the place in the plan a visit follows from is nothing to them. */
const alike = (a: Event, b: Event): boolean =>
  isDeepStrictEqual({ ...a, sequence: 0, from: "" }, { ...b, sequence: 0, from: "" });
