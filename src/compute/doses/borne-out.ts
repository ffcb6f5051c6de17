import type { PlannedMedicine } from "#plan/plan.js";
import { type Problem, problem } from "#problems/problem.js";
import { subjectOf } from "#problems/settle.js";
import type { Amount } from "../facts.js";
import type { Asked } from "./asked.js";
import type { Course } from "./course.js";
import { Exact, plain, told } from "./exact.js";

/** A point that slipped to either side. */
const slips = ["10", "0.1"];
const strengths = ["tablet", "capsule", "liquid", "insulin"] as const;

/** A number that what is given follows from, and the medicine as it would be with another in its place. */
type Figure = { path: (string | number)[]; amount: Amount; instead: (value: string) => PlannedMedicine };

/** What a medicine comes to, and all that is asked about it. */
export type Reckoned = { course: Course | null; problems: Problem[] };

/**
 * The numbers of a medicine that nothing else in the plan or the tables bears out: with ten times as much in their place, or
 * a tenth, another amount would be given, or for another time, and no more would be asked than is asked now. The weight is
 * looked at with the plan.
 */
export function notBorneOut(
  asked: Asked,
  course: Course,
  problems: readonly Problem[],
  reckon: (asked: Asked) => Reckoned,
): Problem[] {
  const known = new Set(problems.map(questionOf));
  const passes = (planned: PlannedMedicine) => {
    const other = reckon({ ...asked, planned });
    const quiet = other.problems.every((one) => one.severity === "note" || known.has(questionOf(one)));
    return quiet && other.course !== null && !sameCourse(course, other.course);
  };
  const unborne = figuresOf(asked.planned).filter(({ amount, instead }) =>
    slips.some((slip) => passes(instead(plain(new Exact(amount.value).times(slip))))),
  );
  const isDays = ({ path }: Figure) => path.at(-1) === "for";
  const days = unborne.filter(isDays);
  const amounts = unborne.filter((figure) => !isDays(figure));
  const medicine = asked.planned.name;
  const at = ([first]: Figure[]) => asked.at(...(first?.path ?? []));
  const numbers = amounts.map(({ amount }) => told(amount)).join(", ");
  const context = asked.planned.give ? "give" : "dose";
  const count = days.map(({ amount }) => amount.value).join(", ");
  return [
    ...(amounts.length > 0 ? [problem("dose-not-borne-out", at(amounts), { medicine, numbers, context })] : []),
    ...(days.length > 0 ? [problem("days-not-borne-out", at(days), { medicine, days: count })] : []),
  ];
}

const questionOf = (one: Problem) => `${one.code}: ${subjectOf(one, [one])}`;

const sameCourse = (one: Course, other: Course): boolean =>
  one.steps.every(({ giving, days }, i) => {
    const step = other.steps[i];
    return step?.days === days && step.giving.amount.eq(giving.amount);
  });

function figuresOf(planned: PlannedMedicine): Figure[] {
  const own = (["dose", "give", ...strengths, "for"] as const).flatMap((field): Figure[] => {
    const amount = planned[field];
    return amount
      ? [{ path: [field], amount, instead: (value) => ({ ...planned, [field]: { ...amount, value } }) }]
      : [];
  });
  const later = planned.next.flatMap((step, i) =>
    (["dose", "give", "for"] as const).flatMap((field): Figure[] => {
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
