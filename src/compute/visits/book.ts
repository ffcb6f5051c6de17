import type { Plan } from "#plan/plan.js";
import { placeOf } from "#problems/place.js";
import { type Problem, problem } from "#problems/problem.js";
import type { Agenda } from "./agenda.js";
import type { Booking } from "./booked.js";
import type { CourseModel } from "./course.js";
import { type Agreed, nothingAgreed, type Solved } from "./solve.js";

export type Solver = (agreed: Agreed) => Solved[] | null;

/** A course with its appointments kept: bookings are those that serve it, by day. */
export type Booked = { solved: Solved[]; booked: number[]; problems: Problem[] };

/**
 * Keeps the appointments of a plan: each must be a day on which the course may need somebody. A single visit that the
 * likeliest course puts on a booked day, and that can be there however the wound goes, is given that day for good.
 * Null where the course is too large to be solved.
 */
export function book(
  plan: Plan,
  model: CourseModel,
  agenda: Agenda,
  bookings: ReadonlyMap<number, Booking>,
  solver: Solver,
): Booked | null {
  const booked = [...bookings.keys()];
  const kept = solver({ ...nothingAgreed, booked });
  if (!kept) return null;
  // A course begins on day 1: nothing of it falls on the day of discharge itself.
  if (booked.length > 0 && (kept.length === 0 || booked.includes(0)))
    return { solved: [], booked: [], problems: whyNot(plan, agenda, bookings, solver) };
  const fixed = agreedSingles(model, kept, booked);
  const solved = fixed.size > 0 ? solver({ booked, fixed, slack: 0 }) : kept;
  return solved && { solved: solved.length < kept.length ? kept : solved, booked, problems: [] };
}

/** Why not all appointments can be kept: those on days the course has no use for, or the first that clashes with others. */
function whyNot(plan: Plan, agenda: Agenda, bookings: ReadonlyMap<number, Booking>, solver: Solver): Problem[] {
  const at = (day: number) => placeOf(plan.places, "booked", bookings.get(day)?.index ?? 0);
  const possible = [...new Set((solver(nothingAgreed) ?? []).flatMap(tripDays))];
  const useless = [...bookings.keys()].filter((number) => !possible.includes(number));
  const problems = useless.map((number) => {
    const day = { day: agenda.dayOf(number) };
    const [near] = possible.toSorted((a, b) => Math.abs(a - number) - Math.abs(b - number));
    if (near === undefined) return problem("booked-without-course", at(number), { day });
    return problem("booked-not-in-course", at(number), { day, nearest: { day: agenda.dayOf(near) } });
  });
  if (problems.length > 0) return problems;
  const clash = firstClash(
    [...bookings.keys()].sort((a, b) => a - b),
    solver,
  );
  return [problem("booked-against-course", at(clash), { day: { day: agenda.dayOf(clash) } })];
}

const tripDays = ({ graph }: Solved): number[] =>
  graph.layers.flatMap((layer) =>
    layer.flatMap(({ steps }) => steps.flatMap(({ day, done }) => (done.length > 0 ? [day] : []))),
  );

/** The first appointment that cannot be kept along with all before it. */
function firstClash(booked: readonly number[], solver: Solver): number {
  const index = booked.findIndex((_, i) => solver({ ...nothingAgreed, booked: booked.slice(0, i + 1) })?.length === 0);
  return booked[index] ?? 0;
}

function agreedSingles({ onces }: CourseModel, solved: readonly Solved[], booked: readonly number[]) {
  const fixed = new Map<number, number>();
  const [likely] = solved;
  for (const { day, done } of likely?.best ?? [])
    for (const { item } of done) {
      if (!booked.includes(day) || item >= onces.length) continue;
      const canAlways = solved.every(({ scenario, graph }) => !scenario.happens[item] || canBe(graph, item, day));
      if (canAlways) fixed.set(item, day);
    }
  return fixed;
}

const canBe = ({ layers }: Solved["graph"], item: number, day: number): boolean =>
  layers[day - 1]?.some(({ steps }) => steps.some(({ done }) => done.some((one) => one.item === item))) ?? false;
