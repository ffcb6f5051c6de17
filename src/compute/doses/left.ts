import { type Outcome, problem } from "#problems/problem.js";
import type { LocalTime, Medicine } from "../facts.js";
import type { Asked } from "./asked.js";
import { Exact, plain, told } from "./exact.js";

/**
 * A medicine that an earlier paper began, as it goes on from now: the doses still to come keep their times and numbers, and
 * what is in the house is what was counted, or what went home less the doses that were due; a bottle of drops stays a bottle. A
 * medicine of this paper is left as it is. Problem: "medicine-runs-out".
 */
export function leftOf(medicine: Medicine, { planned, at }: Asked, now: LocalTime): Outcome<Medicine> {
  if (planned.started === undefined || planned.started >= now) return { value: medicine, problems: [] };
  const doses = medicine.doses.filter((dose) => dose.at > now);
  const goesOn = { ...medicine, lastGiven: null, doses, first: doses[0]?.at ?? null };
  const counted = planned.left?.unit === medicine.dispense.unit ? planned.left.value : undefined;
  if (!canTell(medicine) && counted === undefined) return { value: goesOn, problems: [] };
  const needed = isCounted(medicine) ? sum(doses) : new Exact(0);
  const has = counted === undefined ? needed.plus(medicine.leftOver.value) : new Exact(counted);
  const amount = (value: Exact) => ({ value: plain(value), unit: medicine.dispense.unit });
  const values = { medicine: planned.name, left: told(amount(has)), needed: told(amount(needed)) };
  return {
    value: { ...goesOn, dispense: amount(has), leftOver: amount(Exact.max(0, has.minus(needed))) },
    problems: has.lt(needed) ? [problem("medicine-runs-out", at("left"), values)] : [],
  };
}

/** What goes home in units of what is given: tablets, millilitres. Of a bottle of drops nobody counts what is left. */
const isCounted = ({ give, dispense }: Medicine): boolean => give.unit === dispense.unit;

/** Of what is given as needed nobody knows, without a count, how often it was. */
const canTell = (medicine: Medicine): boolean => isCounted(medicine) && medicine.asNeededMost === null;

/** It was given by the clock, and its last dose has been given. */
export const isOver = ({ doses, asNeededMost, last }: Medicine): boolean =>
  doses.length === 0 && asNeededMost === null && last !== null;

const sum = (doses: Medicine["doses"]): Exact => doses.reduce((all, { give }) => all.plus(give.value), new Exact(0));
