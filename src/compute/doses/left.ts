import { type Outcome, type Problem, problem } from "#problems/problem.js";
import type { LocalTime, Medicine, Stretch } from "../facts.js";
import type { Asked } from "./asked.js";
import { Exact, plain, told } from "./exact.js";

/**
 * A medicine that an earlier paper began, as it goes on from now: the doses still to come keep their times and numbers, steps
 * that are over are told no more, and what is in the house is what was counted, or what went home less the doses that were
 * due; a bottle of drops stays a bottle. A medicine of this paper is left as it is.
 * Problems: "medicine-runs-out", "left-not-believable", "dispensed-in-other-unit".
 */
export function leftOf(medicine: Medicine, { planned, at }: Asked, now: LocalTime): Outcome<Medicine> {
  if (planned.started === undefined || planned.started >= now) return { value: medicine, problems: [] };
  const { unit } = medicine.dispense;
  if (planned.left && planned.left.unit !== unit) {
    const context = medicine.give.unit === unit ? medicine.form : "container";
    const values = { medicine: planned.name, given: told(planned.left), unit, context };
    return { value: null, problems: [problem("dispensed-in-other-unit", at("left"), values)] };
  }
  const doses = medicine.doses.filter((dose) => dose.at > now);
  const steps = medicine.asNeededMost === null ? stillToCome(medicine.steps, doses) : medicine.steps;
  const goesOn = { ...medicine, goesOn: true, lastGiven: null, doses, steps, first: doses[0]?.at ?? null };
  const counted = planned.left?.value;
  if (!canTell(medicine) && counted === undefined) return { value: goesOn, problems: [] };
  const needed = isCounted(medicine) ? sum(doses) : new Exact(0);
  const expected = canTell(medicine) ? needed.plus(medicine.leftOver.value) : null;
  const has = new Exact(counted ?? expected ?? 0);
  const amount = (value: Exact) => ({ value: plain(value), unit });
  const values = { medicine: planned.name, left: told(amount(has)) };
  const problems: Problem[] = [];
  if (has.lt(needed))
    problems.push(problem("medicine-runs-out", at("left"), { ...values, needed: told(amount(needed)) }));
  else if (isDoubtful(has, expected, medicine)) {
    const believable = told(expected ? amount(expected) : medicine.dispense);
    problems.push(problem("left-not-believable", at("left"), { ...values, expected: believable }));
  }
  return { value: { ...goesOn, dispense: amount(has), leftOver: amount(Exact.max(0, has.minus(needed))) }, problems };
}

/** The steps that have doses among these, each from the first of them on. */
const stillToCome = (steps: readonly Stretch[], doses: Medicine["doses"]): Stretch[] =>
  steps.flatMap((step) => {
    const [first] = doses.filter(
      ({ at }) => step.first !== null && step.last !== null && step.first <= at && at <= step.last,
    );
    return first ? [{ ...step, first: first.at }] : [];
  });

/** More than ever went home, or ten times or a tenth of what should be there. Doses that were missed make less of a difference. */
const isDoubtful = (has: Exact, expected: Exact | null, { dispense }: Medicine): boolean =>
  has.gt(dispense.value) ||
  (expected !== null && !expected.isZero() && (has.gte(expected.times(10)) || has.times(10).lte(expected)));

/** What goes home in units of what is given: tablets, millilitres. Of a bottle of drops nobody counts what is left. */
const isCounted = ({ give, dispense }: Medicine): boolean => give.unit === dispense.unit;

/** Of what is given as needed nobody knows, without a count, how often it was. */
const canTell = (medicine: Medicine): boolean => isCounted(medicine) && medicine.asNeededMost === null;

/** Its last dose has been given. What is given as needed has none. */
export const isOver = ({ doses, last }: Medicine): boolean => doses.length === 0 && last !== null;

const sum = (doses: Medicine["doses"]): Exact => doses.reduce((all, { give }) => all.plus(give.value), new Exact(0));
