import type { Plan } from "#plan/plan.js";
import { type Outcome, problem, stops } from "#problems/problem.js";
import type { Medicines } from "#tables/medicines.js";
import type { Chart, Medicine } from "../facts.js";
import { allergyProblems } from "./allergies.js";
import { type Asked, askedOf } from "./asked.js";
import { chartOf } from "./chart.js";
import { doubtfulNames } from "./doubtful-names.js";
import { namedIn } from "./find.js";
import { labelLacks } from "./label.js";
import { isOver, leftOf } from "./left.js";
import { medicineOf } from "./medicine.js";
import { withoutNeedless } from "./needless.js";
import { mayHoldPoison, neverGiven } from "./never.js";
import { pairProblems } from "./pairs.js";

/** What is left of a medicine that an earlier paper began. */
const follow = (computed: Outcome<Medicine>, asked: Asked, now: string): Outcome<Medicine> => {
  const left = computed.value && leftOf(computed.value, asked, now);
  return left ? { value: left.value, problems: [...computed.problems, ...left.problems] } : computed;
};

/**
 * The medicines of a plan: what to give, when, how much goes home, and every rule that has something to say about it.
 * The chart holds each dose given by the clock once; it is null where there is none.
 */
export function computeDoses(
  plan: Plan,
  { rows: table, common, labels }: Medicines,
): Outcome<{ medicines: Medicine[]; chart: Chart | null }> {
  const named = askedOf(plan).map((asked) => ({ asked, rows: namedIn(asked.planned.name, table) }));
  const computed = named.map(({ asked, rows }) => follow(medicineOf(asked, rows, common), asked, plan.discharged));
  const strangers = named.filter(({ rows }) => rows.length === 0).map(({ asked }) => asked);
  const doubtful = doubtfulNames(plan, table);
  const unknown = strangers
    .filter(({ planned }) => !doubtful.some(({ name }) => name === planned.name))
    .map(({ planned, at }) => problem("medicine-unknown", at("name"), { given: planned.name }));
  const problems = [
    ...named.flatMap(({ asked, rows }) => [
      ...neverGiven(asked, rows),
      ...mayHoldPoison(asked, rows, table),
      ...allergyProblems(plan, asked, rows, table),
    ]),
    ...pairProblems(plan, named, table),
    ...doubtful.map((one) => one.problem),
    ...unknown,
    ...labelLacks(
      plan,
      labels,
      strangers.map(({ planned }) => planned.name),
    ),
    ...computed.flatMap((outcome) => outcome.problems),
  ];
  const whole = computed.every(({ value }) => value) && !stops(problems);
  const given = computed.flatMap(({ value }) => (value && !isOver(value) ? value : []));
  const medicines = withoutNeedless(
    given,
    named.flatMap(({ rows }) => rows),
  );
  return { value: whole ? { medicines, chart: chartOf(medicines.flatMap(({ doses }) => doses)) } : null, problems };
}
