import { ask, note, stop } from "./kind.js";

type Nothing = Record<never, never>;
type OneDay = { day: string };

/** The course language and the dates that follow from it. */
export const visitKinds = {
  // The words of a course line.
  "visit-name-missing": stop<{ given: string }>(),
  "visit-kind-unknown": stop<{ given: string; near: readonly string[]; known: readonly string[] }>(),
  "course-word-unknown": stop<{ given: string; near: readonly string[]; expected: readonly string[] }>(),
  "course-line-unfinished": stop<{ expected: readonly string[] }>(),
  "course-days-from-nothing": stop<{ given: string }>(),
  "course-said-twice": stop<{ given: string }>(),
  "course-words-clash": stop<{ given: string }>(),
  "course-number-out": stop<{ given: string; least: number; most: number }>(),
  "course-range-backwards": stop<{ from: number | { day: string }; to: number | { day: string } }>(),
  "course-day-not-after-discharge": stop<{ given: string }>(),
  "course-day-unreadable": stop<{ given: string }>(),
  "visit-when-missing": stop<{ given: string }>(),
  "visit-end-missing": stop<{ given: string }>(),
  "nothing-to-follow": stop<Nothing>(),

  // What the lines of one course say of each other.
  "anchor-unknown": stop<{ given: string; known: readonly string[] }>(),
  "anchor-repeats": stop<{ given: string }>(),
  "anchor-circle": stop<{ given: string }>(),
  "end-uncertain": stop<{ given: string }>(),
  "bandage-end-unknown": stop<Nothing>(),
  "gap-longer-than-window": stop<{ gap: number; window: number }>(),
  "course-ends-before-it-begins": stop<{ begins: OneDay; ends: OneDay }>(),
  "course-too-open": stop<Nothing>(),
  "window-unusual": note<{ given: string; from: number; to: number; usualFrom: number; usualTo: number }>(),
  "gap-unusual": note<{ given: string; from: number; to: number; usualFrom: number; usualTo: number }>(),

  // The course on the clinic's calendar.
  "closed-day": stop<{ day: OneDay; nearest: OneDay }>(),
  "closed-for": stop<{ day: OneDay; closure: string; nearest: OneDay }>(),
  "owner-cannot-come": stop<{ day: OneDay; nearest: OneDay }>(),
  "clinician-away": stop<{ day: OneDay; clinician: string; nearest: OneDay }>(),
  "no-time-in-slot": stop<{ day: OneDay; nearest: OneDay }>(),
  "no-open-day": stop<{ from: OneDay; to: OneDay; nearest: OneDay }>(),
  "no-open-day-for": stop<{ from: OneDay; to: OneDay; closure: string; nearest: OneDay }>(),
  "no-day-near": stop<{ day: OneDay }>(),
  "day-against-others": stop<{ day: OneDay; nearest: OneDay }>(),
  "window-against-others": stop<{ from: OneDay; to: OneDay; nearest: OneDay }>(),
  "course-fits-no-calendar": stop<Nothing>(),
  "repeat-never-comes": ask<{ given: string }>("given"),
  "repeat-meets-closed-day": ask<{ day: OneDay; after: OneDay }>(),
  "repeat-may-meet-closed-day": note<{ day: OneDay; after: OneDay }>(),
  "repeat-meets-absence": ask<{ day: OneDay; after: OneDay }>(),
  "repeat-may-meet-absence": note<{ day: OneDay; after: OneDay }>(),
  "visit-at-partner": note<{ day: OneDay; partner: string }>(),
  "clinician-unknown": note<{ given: string; near: readonly string[] }>(),
  "holiday-place-unknown": stop<{ given: string; near: readonly string[] }>(),

  // Appointments already agreed.
  "booked-outside-hours": ask<{ given: string; open: string }>(),
  "booked-after-last-appointment": ask<{ given: string; last: string }>(),
  "booked-too-early": ask<{ given: string; slot: string }>(),
  "booked-too-late": ask<{ given: string; slot: string }>(),
  "booked-without-clinician": ask<{ day: OneDay; clinician: string }>(),
  "booked-not-in-course": stop<{ day: OneDay; nearest: OneDay }>(),
  "booked-without-course": stop<{ day: OneDay }>(),
  "booked-twice": stop<{ day: OneDay }>(),
  "booked-against-course": stop<{ day: OneDay }>(),
  "booked-when-owner-cannot-come": note<{ day: OneDay }>(),
};
