import { differenceInMonths, parseISO } from "date-fns";
import type { Plan } from "#plan/plan.js";
import { nearest } from "#problems/near.js";
import { placeOf } from "#problems/place.js";
import { type Outcome, type Problem, problem } from "#problems/problem.js";
import type { Animal } from "#tables/animals.js";
import { simple } from "#tables/simple.js";
import { named } from "./named.js";
import { sexOf } from "./sex-of.js";

/**
 * What this animal is, as ids of shared/animals.json: what the plan says of it, and what follows from its breed, its age and
 * what it takes. Problems: "condition-unknown", "condition-not-for-sex".
 */
export function animalIs(plan: Plan, animals: readonly Animal[]): Outcome<string[]> {
  const sayable = animals.filter(({ said }) => said);
  const problems: Problem[] = [];
  const said = plan.patient.conditions.flatMap((given, i) => {
    const at = placeOf(plan.places, "patient", "conditions", i);
    const row = named(given, sayable);
    const known = sayable.map(({ id }) => id);
    if (!row) problems.push(problem("condition-unknown", at, { given, near: nearest(given, known), known }));
    else if (row.sex && row.sex !== sexOf(plan.patient))
      problems.push(problem("condition-not-for-sex", at, { condition: row.id, sex: plan.patient.sex }));
    return row?.id ?? [];
  });
  const follows = animals.filter((row) => followsFrom(row, plan)).map(({ id }) => id);
  const is = animals.map(({ id }) => id).filter((id) => said.includes(id) || follows.includes(id));
  return { value: is, problems };
}

function followsFrom(
  { breed, takes, youngerThan, atLeast }: Animal,
  { patient, medicines, discharged }: Plan,
): boolean {
  // An animal whose birth is not known is neither young nor old.
  const months = patient.born === undefined ? null : differenceInMonths(parseISO(discharged), parseISO(patient.born));
  const taken = [...patient.takes, ...medicines.flatMap(({ name, insulin }) => (insulin ? [name, "insulin"] : name))];
  return (
    mentions(breed, [patient.breed ?? ""]) ||
    mentions(takes, taken) ||
    (months !== null && youngerThan !== undefined && months < youngerThan) ||
    (months !== null && atLeast !== undefined && months >= atLeast)
  );
}

const mentions = (wanted: readonly string[] = [], texts: readonly string[]) =>
  wanted.some((word) => texts.some((text) => simple(text).includes(word)));
