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
export function notBorneOut(asked: Asked, now: Reckoned, reckon: (asked: Asked) => Reckoned): Problem[] {
  const known = new Set(now.problems.map(questionOf));
  const passes = (planned: PlannedMedicine) => {
    const other = reckon({ ...asked, planned });
    const quiet = other.problems.every((one) => one.severity === "note" || known.has(questionOf(one)));
    return quiet && now.course !== null && other.course !== null && !sameCourse(now.course, other.course);
  };
  const unborne = figuresOf(asked.planned).filter(({ amount, instead }) =>
    slips.some((slip) => passes(instead(plain(new Exact(amount.value).times(slip))))),
  );
  const medicine = asked.planned.name;
  const [days, amounts] = parted(unborne, ({ path }) => path.at(-1) === "for");
  const problems: Problem[] = [];
  const context = asked.planned.give ? "give" : "dose";
  if (amounts[0]) {
    const numbers = amounts.map(({ amount }) => told(amount)).join(", ");
    problems.push(problem("dose-not-borne-out", asked.at(...amounts[0].path), { medicine, numbers, context }));
  }
  if (days[0]) {
    const each = days.map(({ amount }) => amount.value).join(", ");
    problems.push(problem("days-not-borne-out", asked.at(...days[0].path), { medicine, days: each }));
  }
  return problems;
}

const parted = <T>(all: readonly T[], is: (one: T) => boolean): [T[], T[]] => [
  all.filter(is),
  all.filter((one) => !is(one)),
];

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
