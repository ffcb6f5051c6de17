import type { Plan } from "#plan/plan.js";
import { placeOf } from "#problems/place.js";
import { type Outcome, problem, stops } from "#problems/problem.js";
import type { VisitKind } from "#tables/visits.js";
import { checkClinicians } from "../calendar/clinician.js";
import { checkHolidayPlace } from "../calendar/holidays.js";
import type { Care, Course } from "../facts.js";
import { type Agenda, agendaOf } from "./agenda.js";
import { blockedVisits } from "./blocked.js";
import { type Booked, book, type Solver } from "./book.js";
import { type Booking, readBooked } from "./booked.js";
import { checkBooked } from "./check-booked.js";
import { checkPartnerDays, checkStretches } from "./check-days.js";
import { checkLines } from "./check-lines.js";
import { checkNever } from "./check-never.js";
import { countsOf, endOf } from "./counts.js";
import type { CourseModel } from "./course.js";
import { firstTripOf } from "./first-trip.js";
import { link } from "./link.js";
import { readLines } from "./read-lines.js";
import { rowsOf } from "./rows.js";
import { scenariosOf } from "./scenario.js";
import { cutAt } from "./schedule/slots.js";
import { nothingAgreed, type Solved, solve } from "./solve.js";
import { tripsOf } from "./trips.js";
import { type OftenCourse, type UsualDays, usualDays } from "./usual.js";
import { visitsOf } from "./visits-of.js";
import { wheresOf } from "./wheres.js";

/**
 * The visits that follow from a plan's course lines, its appointments and the clinic's calendar. topics: what is usual for them;
 * care: what the animal is cared for, in the order of the plan.
 * Every day is kept within its window and gap and falls on a day somebody can be seen; earliest and latest hold for every
 * way the wound and the decisions may go.
 */
export function computeVisits(
  plan: Plan,
  kinds: VisitKind[],
  topics: readonly OftenCourse[] = [],
  care: readonly Care[] = [],
): Outcome<Course> {
  const profile = [...checkHolidayPlace(plan), ...checkClinicians(plan, kinds)];
  if (stops(profile)) return { value: null, problems: profile };
  const agenda = agendaOf(plan, kinds);
  const model = readCourse(plan, kinds, agenda, usualDays(plan, topics, kinds));
  const { bookings, problems: wrongBookings } = readBooked(plan, agenda);
  const problems = [...profile, ...model.problems, ...wrongBookings];
  if (!model.value || stops(problems)) return { value: null, problems };

  const kept = keep(plan, model.value, agenda, bookings);
  problems.push(...kept.problems);
  if (!kept.value) return { value: null, problems };
  const { solved, booked, everyWay } = kept.value;
  problems.push(...checkStretches(model.value, solved, agenda), ...checkPartnerDays(model.value, solved, agenda));
  // A visit that was may have settled how the wound goes, and so may an appointment: what it leaves no day had one without it.
  if (plan.revision === 0 && !stops(problems) && checkNever(model.value, solved).length > 0)
    problems.push(...checkNever(model.value, everyWay()));

  const rows = rowsOf(model.value, solved, cutAt(model.value.onces.length, booked));
  const trips = tripsOf(model.value, rows, solved[0]?.best ?? [], booked, agenda);
  problems.push(...checkBooked(plan, model.value, agenda, trips, bookings));
  const ends = endOf(solved, agenda);
  const course = {
    visits: visitsOf(plan, model.value, kinds, agenda, trips, bookings, wheresOf(care)),
    ...countsOf(model.value, solved),
    ends,
    first: firstTripOf(model.value, solved, agenda),
    closed: closedUntil(agenda, ends),
  };
  return { value: course, problems };
}

/** The lines of a plan as one course, checked against each other and against the days the clinic can be reached. */
function readCourse(plan: Plan, kinds: VisitKind[], agenda: Agenda, usual: UsualDays): Outcome<CourseModel> {
  const { lines, problems } = readLines(plan, kinds);
  if (stops(problems)) return { value: null, problems };
  const linked = link(lines);
  if (!linked.value) return linked;
  return {
    value: linked.value,
    problems: [...linked.problems, ...checkLines(linked.value, agenda, usual, plan.revision > 0)],
  };
}

/** everyWay: also the schedules there would be without the appointments. */
type Kept = Pick<Booked, "solved" | "booked"> & { everyWay: () => Solved[] };

/**
 * The schedules that keep the course and its appointments. Problems: "course-too-open", "course-fits-no-calendar", those of
 * the appointments, or of the visits that have no day.
 */
function keep(plan: Plan, model: CourseModel, agenda: Agenda, bookings: ReadonlyMap<number, Booking>): Outcome<Kept> {
  const at = placeOf(plan.places, "care");
  const scenarios = scenariosOf(model);
  const solver: Solver = (agreed) => scenarios && solve(model, scenarios, agenda, agreed);
  const kept = scenarios && book(plan, model, agenda, bookings, solver);
  if (!kept) return { value: null, problems: [problem("course-too-open", at, {})] };

  const noDay = (solved: readonly Solved[]): Outcome<never> => {
    const stuck = scenarios.filter((one) => !solved.some(({ scenario }) => scenario === one));
    const blocked = blockedVisits(model, stuck, agenda);
    return { value: null, problems: blocked.length > 0 ? blocked : [problem("course-fits-no-calendar", at, {})] };
  };
  if (stops(kept.problems)) {
    const unbooked = solver(nothingAgreed);
    if (!unbooked) return { value: null, problems: [problem("course-too-open", at, {})] };
    return unbooked.length === 0 ? noDay(unbooked) : { value: null, problems: kept.problems };
  }
  // An appointment may settle how the wound goes; without one every way it may go must have its days.
  const all = bookings.size > 0 || kept.solved.length === scenarios.length;
  if (!all) return noDay(kept.solved);
  const everyWay = () => (bookings.size > 0 ? [...kept.solved, ...(solver(nothingAgreed) ?? [])] : kept.solved);
  return { value: { ...kept, everyWay }, problems: kept.problems };
}

/** The days from discharge to the latest end on which the clinic is closed. */
function closedUntil(agenda: Agenda, ends: Course["ends"]): Course["closed"] {
  const days = Array.from({ length: ends ? agenda.numberOf(ends.latest) : 0 }, (_, i) => i + 1);
  return days.flatMap((number) => {
    const { closed } = agenda.on(number);
    return closed ? [{ day: agenda.dayOf(number), ...closed }] : [];
  });
}
