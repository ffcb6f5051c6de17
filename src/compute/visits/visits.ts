import type { Plan } from "#plan/plan.js";
import { placeOf } from "#problems/place.js";
import { type Outcome, problem, stops } from "#problems/problem.js";
import type { VisitKind } from "#tables/visits.js";
import { checkHolidayPlace } from "../calendar/holidays.js";
import type { Course } from "../facts.js";
import { type Agenda, agendaOf } from "./agenda.js";
import { book } from "./book.js";
import { readBooked } from "./booked.js";
import { checkPartnerDays, checkStretches } from "./check-days.js";
import { checkLines } from "./check-lines.js";
import { countsOf, endOf } from "./counts.js";
import { link } from "./link.js";
import { readLines } from "./read-lines.js";
import { rowsOf } from "./rows.js";
import { mostScenarios, scenariosOf } from "./scenario.js";
import { cutAt } from "./schedule/slots.js";
import { type Agreed, solve } from "./solve.js";
import { tripsOf } from "./trips.js";
import { visitsOf } from "./visits-of.js";

/**
 * The visits that follow from a plan's course lines, its appointments and the clinic's calendar.
 * Every day is kept within its window and gap and falls on a day somebody can be seen; earliest and latest hold for every
 * way the wound and the decisions may go.
 */
export function computeVisits(plan: Plan, kinds: VisitKind[]): Outcome<Course> {
  const wrongPlace = checkHolidayPlace(plan);
  if (wrongPlace.length > 0) return { value: null, problems: wrongPlace };
  const agenda = agendaOf(plan);
  const { lines, problems } = readLines(plan, kinds);
  const { bookings, problems: wrongBookings } = readBooked(plan, agenda);
  problems.push(...wrongBookings);
  if (stops(problems)) return { value: null, problems };

  const linked = link(lines);
  problems.push(...linked.problems);
  const model = linked.value;
  if (!model) return { value: null, problems };
  problems.push(...checkLines(model, agenda));
  if (stops(problems)) return { value: null, problems };

  const tooOpen = () => [
    ...problems,
    problem("course-too-open", placeOf(plan.places, "care"), { limit: mostScenarios }),
  ];
  const scenarios = scenariosOf(model);
  const kept =
    scenarios && book(plan, model, agenda, bookings, (agreed: Agreed) => solve(model, scenarios, agenda, agreed));
  if (!kept) return { value: null, problems: tooOpen() };
  problems.push(...kept.problems);
  if (kept.solved.length === 0 && kept.problems.length === 0)
    problems.push(problem("course-fits-no-calendar", placeOf(plan.places, "care"), {}));
  if (stops(problems)) return { value: null, problems };

  const { solved, booked } = kept;
  problems.push(...checkStretches(model, solved, agenda), ...checkPartnerDays(model, solved, agenda));
  const cut = cutAt(model.onces.length, booked);
  const trips = tripsOf(model, rowsOf(model, solved, cut), solved[0]?.best ?? [], booked, cut);
  const ends = endOf(solved, agenda);
  const course = {
    visits: visitsOf(plan, model, kinds, agenda, trips, bookings),
    ...countsOf(model, solved),
    ends,
    closed: closedUntil(agenda, ends),
  };
  return { value: course, problems };
}

/** The days from discharge to the latest end on which the clinic is closed. */
function closedUntil(agenda: Agenda, ends: Course["ends"]): Course["closed"] {
  const days = Array.from({ length: ends ? agenda.numberOf(ends.latest) : 0 }, (_, i) => i + 1);
  return days.flatMap((number) => {
    const { closed } = agenda.on(number);
    return closed ? [{ day: agenda.dayOf(number), ...closed }] : [];
  });
}
