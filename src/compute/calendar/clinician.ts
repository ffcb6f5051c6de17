import type { Plan } from "#plan/plan.js";
import { nearest } from "#problems/near.js";
import { placeOf } from "#problems/place.js";
import { type Problem, problem } from "#problems/problem.js";
import type { VisitKind } from "#tables/visits.js";
import type { Day } from "../facts.js";
import { dateRange, weekdayOf, weekdays } from "./days.js";

/** The case's own clinician, where the profile says when they are in. kinds: ids of the visits that wait for them. */
export type Clinician = { name: string; kinds: Set<string>; isIn: (day: Day) => boolean };

export function clinicianOf(plan: Plan, kinds: readonly VisitKind[]): Clinician | null {
  const found = plan.clinic.clinicians.find(({ name }) => name === plan.clinician);
  if (!found) return null;
  const { name, days, away, sees } = found;
  const absences = away.map(dateRange);
  const only = sees?.flatMap((given) => kindNamed(kinds, given)?.id ?? []);
  return {
    name,
    kinds: new Set(only ?? kinds.map(({ id }) => id)),
    isIn: (day) =>
      days.includes(weekdays[weekdayOf(day) - 1] ?? "sunday") &&
      !absences.some(({ from, to }) => from <= day && day <= to),
  };
}

const kindNamed = (kinds: readonly VisitKind[], given: string) =>
  kinds.find(({ id, words }) => [id, ...words].includes(given.toLowerCase()));

/** Every visit a clinician sees has a kind, and the plan's clinician is one of the profile's where it lists any. */
export function checkClinicians(plan: Plan, kinds: readonly VisitKind[]): Problem[] {
  const { clinician: given, clinic, places } = plan;
  const names = clinic.clinicians.map(({ name }) => name);
  const unknown = clinic.clinicians.flatMap(({ sees = [] }, i) =>
    sees.flatMap((word, j) => {
      if (kindNamed(kinds, word)) return [];
      const near = nearest(
        word,
        kinds.flatMap(({ words }) => words),
      );
      const known = kinds.map(({ words: [name = ""] }) => name);
      const at = placeOf(places, "clinic", "clinicians", i, "sees", j);
      return [problem("visit-kind-unknown", at, { given: word, near, known })];
    }),
  );
  if (!given || names.length === 0 || names.includes(given)) return unknown;
  return [
    ...unknown,
    problem("clinician-unknown", placeOf(places, "clinician"), { given, near: nearest(given, names) }),
  ];
}
