import type { PlannedMedicine } from "#plan/plan.js";
import { type Problem, problem } from "#problems/problem.js";
import { subjectOf } from "#problems/settle.js";
import type { MedicineRow } from "#tables/medicines.js";
import type { Amount } from "../facts.js";
import type { Asked } from "./asked.js";
import { type Course, courseOf } from "./course.js";
import { Exact, plain, told } from "./exact.js";

/** A point that slipped to either side. */
const slips = ["10", "0.1"];
const strengths = ["tablet", "capsule", "liquid", "insulin"] as const;

/** A number that an amount follows from, and the medicine as it would be with another in its place. */
type Figure = { path: (string | number)[]; amount: Amount; instead: (value: string) => PlannedMedicine };

/**
 * The numbers of a medicine that nothing else in the plan or the tables bears out: with ten times as much in their place, or
 * a tenth, another amount would be given and no more would be asked than is asked now. The weight is looked at with the plan.
 */
export function notBorneOut(
  asked: Asked,
  row: MedicineRow | null,
  course: Course,
  problems: readonly Problem[],
): Problem[] {
  const known = new Set(problems.map(questionOf));
  const passes = (planned: PlannedMedicine) => {
    const other = courseOf({ ...asked, planned }, row);
    const quiet = other.problems.every((one) => one.severity === "note" || known.has(questionOf(one)));
    return quiet && other.value !== null && !sameAmounts(course, other.value);
  };
  const unborne = figuresOf(asked.planned).filter(({ amount, instead }) =>
    slips.some((slip) => passes(instead(plain(new Exact(amount.value).times(slip))))),
  );
  const [first] = unborne;
  if (!first) return [];
  const numbers = unborne.map(({ amount }) => told(amount)).join(", ");
  const context = asked.planned.give ? "give" : "dose";
  return [problem("dose-not-borne-out", asked.at(...first.path), { medicine: asked.planned.name, numbers, context })];
}

const questionOf = (one: Problem) => `${one.code}: ${subjectOf(one, [one])}`;

const sameAmounts = (one: Course, other: Course): boolean =>
  one.steps.every(({ giving }, i) => other.steps[i]?.giving.amount.eq(giving.amount));

function figuresOf(planned: PlannedMedicine): Figure[] {
  const own = (["dose", "give", ...strengths] as const).flatMap((field): Figure[] => {
    const amount = planned[field];
    return amount
      ? [{ path: [field], amount, instead: (value) => ({ ...planned, [field]: { ...amount, value } }) }]
      : [];
  });
  const later = planned.next.flatMap((step, i) =>
    (["dose", "give"] as const).flatMap((field): Figure[] => {
      const amount = step[field];
      if (!amount) return [];
      const instead = (value: string) => ({
        ...planned,
        next: planned.next.with(i, { ...step, [field]: { ...amount, value } }),
      });
      return [{ path: ["next", i, field], amount, instead }];
    }),
  );
  return [...own, ...later];
}
