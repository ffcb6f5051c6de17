import type { Plan } from "#plan/plan.js";
import { placeOf } from "#problems/place.js";
import { type Problem, problem } from "#problems/problem.js";
import type { Agenda } from "./agenda.js";
import type { Booking } from "./booked.js";
import type { CourseModel } from "./course.js";
import type { Trip } from "./trips.js";

/** Tells of appointments outside the times of day a line allows, or on a day without the clinician who does it. */
export function checkBooked(
  plan: Plan,
  { onces, runs }: CourseModel,
  agenda: Agenda,
  trips: readonly Trip[],
  bookings: ReadonlyMap<number, Booking>,
): Problem[] {
  return trips.flatMap(({ booked, rows }) => {
    const booking = booked === null ? undefined : bookings.get(booked);
    if (!booking) return [];
    const lines = rows.flatMap(({ item, phase }) => onces[item] ?? runs[item - onces.length]?.phases[phase] ?? []);
    const place = placeOf(plan.places, "booked", booking.index);
    const time = booking.at.slice(11);
    const given = booking.at.replace("T", " ");
    const early = lines.map(({ slot }) => slot.from).find((from) => from !== null && time < from);
    const late = lines.map(({ slot }) => slot.to).find((to) => to !== null && time > to);
    const [clinician] = lines.flatMap(({ kind, slot }) => agenda.reach(kind.value, slot).clinician ?? []);
    return [
      ...(early ? [problem("booked-too-early", place, { given, slot: early })] : []),
      ...(late ? [problem("booked-too-late", place, { given, slot: late })] : []),
      ...(clinician && !agenda.isIn(booking.number)
        ? [problem("booked-without-clinician", place, { day: { day: booking.at.slice(0, 10) }, clinician })]
        : []),
    ];
  });
}
