import type { Plan } from "#plan/plan.js";
import type { VisitKind } from "#tables/visits.js";
import { visitMinutes } from "../calendar/opening.js";
import type { BodySite, Certainty, Purpose, Visit } from "../facts.js";
import type { Agenda } from "./agenda.js";
import type { Booking } from "./booked.js";
import type { CourseModel } from "./course.js";
import { doneCounts } from "./done.js";
import type { Row } from "./rows.js";
import type { Trip } from "./trips.js";

/** The trips of a course as the owner will read them. */
export function visitsOf(
  plan: Plan,
  model: CourseModel,
  kinds: readonly VisitKind[],
  agenda: Agenda,
  trips: readonly Trip[],
  bookings: ReadonlyMap<number, Booking>,
  wheres: readonly (BodySite | null)[],
): Visit[] {
  // Visits that took place have the first numbers: one that is still to come keeps its own from paper to paper. What repeats in
  // several cares is done for all of them on one visit.
  const caresOf = (kind: string) =>
    new Set([0, ...model.runs.flatMap((run) => (run.kind.id === kind ? run.care : []))]);
  const numbers = new Map(
    doneCounts(plan.done, kinds).flatMap(([kind, count]) =>
      [...caresOf(kind)].map((care): [string, number] => [`${care}:${kind}`, count]),
    ),
  );
  const purposeOf = (row: Row): Purpose => {
    const key = `${row.care}:${row.kind}`;
    const number = (numbers.get(key) ?? 0) + 1;
    numbers.set(key, number);
    return { kind: row.kind, number, where: wheres[row.care] ?? null, from: placeOfRow(model, row) };
  };
  const usual = visitMinutes(plan);
  return trips.flatMap((trip): Visit[] => {
    const [first] = trip.rows;
    if (!first) return [];
    const purposes = trip.rows.map(purposeOf);
    const minutes = purposes.map(({ kind }) => kinds.find(({ id }) => id === kind)?.minutes ?? usual);
    const booking = trip.booked === null ? undefined : bookings.get(trip.booked);
    return [
      {
        id: [first.kind, purposes[0]?.number, ...(first.care > 0 ? [first.care + 1] : [])].join("-"),
        purposes,
        certainty: certaintyOf(first, booking),
        earliest: agenda.dayOf(trip.days[0] ?? trip.ideal),
        ideal: agenda.dayOf(trip.ideal),
        latest: agenda.dayOf(trip.days.at(-1) ?? trip.ideal),
        days: trip.days.map(agenda.dayOf),
        at: booking?.at ?? null,
        minutes: minutes.reduce((sum, one) => sum + one, 0),
        where: whereOn(agenda, trip),
        dependsOn: first.dependsOn,
        unless: first.unless,
        from: booking ? (plan.places[`booked/${booking.index}`] ?? placeOfRow(model, first)) : placeOfRow(model, first),
      },
    ];
  });
}

const certaintyOf = ({ always }: Row, booking: Booking | undefined): Certainty => {
  if (booking) return "booked";
  return always ? "expected" : "possible";
};

/** The partner's name where the trip can only be made there. */
function whereOn(agenda: Agenda, { days }: Trip): string | null {
  const places = new Set(days.map((day) => agenda.on(day).partner));
  const [only = null] = places;
  return places.size === 1 ? only : null;
}

function placeOfRow({ onces, runs }: CourseModel, { item, phase }: Row) {
  const at = onces[item]?.at ?? runs[item - onces.length]?.phases[phase]?.at;
  return at ?? { file: "plan", line: 1, column: 1, length: 1 };
}
