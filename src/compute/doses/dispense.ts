import { type Outcome, type Problem, problem, stops } from "#problems/problem.js";
import type { Amount } from "../facts.js";
import type { Asked } from "./asked.js";
import { Exact, plain, told } from "./exact.js";
import type { Form } from "./made-up.js";
import { isStep } from "./round.js";
import type { Step } from "./steps.js";

/** What goes home and what is left of it after the last dose. */
export type Dispensed = { dispense: Amount; leftOver: Amount };

const containers: Partial<Record<Form["kind"], string>> = {
  drops: "bottle",
  ointment: "tube",
  spray: "bottle",
  insulin: "vial",
};

/**
 * Whole tablets, capsules and millilitres for all doses; with "as needed" for the most that may be given. Drops,
 * ointments, sprays and insulin go home in one container, of which nobody counts what is left.
 */
export function dispensed(
  asked: Asked,
  form: Form,
  steps: readonly Step[],
  mostADay: number | null,
): Outcome<Dispensed> {
  const container = containers[form.kind];
  if (container) {
    const none = { value: "0", unit: container };
    return { value: { dispense: { value: "1", unit: container }, leftOver: none }, problems: [] };
  }
  const needed = steps.reduce(
    (sum, { giving, count, days }) => sum.plus(giving.amount.times(mostADay === null ? count : mostADay * days)),
    new Exact(0),
  );
  const written = asked.planned.dispense;
  const problems = written ? doubtful(asked, written, needed, form) : [];
  const given = written && !stops(problems) ? new Exact(written.value) : needed.ceil();
  const amount = (value: Exact) => ({ value: plain(value), unit: form.unit });
  return { value: { dispense: amount(given), leftOver: amount(given.minus(needed)) }, problems };
}

/** So many times what is needed is more likely a slip; a liquid goes home in the bottle it comes in. Common practice, no source. */
const mostTimes = (unit: string) => (unit === "mL" ? 10 : 3);

function doubtful({ planned, at }: Asked, written: Amount, needed: Exact, { unit, kind, step }: Form): Problem[] {
  const values = { medicine: planned.name, given: told(written) };
  if (written.unit !== unit) return [problem("dispensed-in-other-unit", at("dispense"), { ...values, context: kind })];
  if (unit !== "mL" && !isStep(new Exact(written.value), step)) {
    const least = { ...values, step: `${plain(step)} ${unit}` };
    return [problem("give-not-measurable", at("dispense"), least)];
  }
  const needs = { ...values, needed: `${plain(needed)} ${unit}` };
  if (needed.gt(written.value)) return [problem("dispensed-too-little", at("dispense"), needs)];
  if (needed.times(mostTimes(unit)).gt(written.value)) return [];
  return [problem("dispensed-too-much", at("dispense"), needs)];
}
