import { type Outcome, type Problem, problem } from "#problems/problem.js";
import type { Amount } from "../facts.js";
import type { Asked } from "./asked.js";
import { Exact, plain, told } from "./exact.js";
import type { Form } from "./made-up.js";
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
  const problems = written ? tooLittle(asked, written, needed, form) : [];
  const given = written && problems.length === 0 ? new Exact(written.value) : needed.ceil();
  const amount = (value: Exact) => ({ value: plain(value), unit: form.unit });
  return { value: { dispense: amount(given), leftOver: amount(given.minus(needed)) }, problems };
}

function tooLittle({ planned, at }: Asked, written: Amount, needed: Exact, { unit, kind }: Form): Problem[] {
  const values = { medicine: planned.name, given: told(written) };
  if (written.unit !== unit) return [problem("dispensed-in-other-unit", at("dispense"), { ...values, context: kind })];
  if (needed.lte(written.value)) return [];
  return [problem("dispensed-too-little", at("dispense"), { ...values, needed: `${plain(needed)} ${unit}` })];
}
