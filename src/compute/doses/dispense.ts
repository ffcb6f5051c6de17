import { type Outcome, type Problem, problem, stops } from "#problems/problem.js";
import type { Amount } from "../facts.js";
import type { Asked } from "./asked.js";
import { containerProblems, containersNeeded } from "./container.js";
import { Exact, plain, told } from "./exact.js";
import type { Form } from "./made-up.js";
import { isStep } from "./round.js";
import { daysOf, type Step } from "./steps.js";

/**
 * What goes home and what is left of it after the last dose. Nobody counts what is left in a bottle. holds: what one of them
 * holds, where the plan says it.
 */
export type Dispensed = { dispense: Amount; leftOver: Amount; holds: Amount | null };

/**
 * Whole tablets, capsules and millilitres for all doses; with "as needed" for the most that may be given. Drops, ointments,
 * sprays and insulin go home in as many bottles, tubes or vials as hold them.
 */
export function dispensed(
  asked: Asked,
  form: Form,
  steps: readonly Step[],
  mostADay: number | null,
): Outcome<Dispensed> {
  const unit = form.container ?? form.unit;
  const given = inAll(steps, mostADay);
  const days = daysOf(steps);
  const unkept = containerProblems(asked, form, given, days);
  if (stops(unkept)) return { value: null, problems: unkept };
  const needed = form.container ? containersNeeded(asked, form, given, days) : given;
  const written = asked.planned.dispense;
  const doubts = written ? doubtful(asked, written, { value: needed, unit }, form) : [];
  const home = written && !stops(doubts) ? new Exact(written.value) : needed.ceil();
  const amount = (value: Exact) => ({ value: plain(value), unit });
  const leftOver = form.container ? new Exact(0) : home.minus(needed);
  const holds = asked.planned.container ?? null;
  return { value: { dispense: amount(home), leftOver: amount(leftOver), holds }, problems: [...unkept, ...doubts] };
}

/** All that is given, in what is given. */
const inAll = (steps: readonly Step[], mostADay: number | null): Exact =>
  steps.reduce(
    (sum, { giving, count, days }) => sum.plus(giving.amount.times(mostADay === null ? count : mostADay * days)),
    new Exact(0),
  );

/** So many times what is needed is more likely a slip; a liquid goes home in the bottle it comes in. Common practice, no source. */
const mostTimes = (unit: string) => (unit === "mL" ? 10 : 3);

function doubtful(
  { planned, at }: Asked,
  written: Amount,
  home: { value: Exact; unit: string },
  form: Form,
): Problem[] {
  const { value: needed, unit } = home;
  const values = { medicine: planned.name, given: told(written) };
  const context = form.container ? "container" : form.kind;
  if (written.unit !== unit) return [problem("dispensed-in-other-unit", at("dispense"), { ...values, unit, context })];
  const least = form.container ? new Exact(1) : form.step;
  if (unit !== "mL" && !isStep(new Exact(written.value), least))
    return [problem("give-not-measurable", at("dispense"), { ...values, step: `${plain(least)} ${unit}` })];
  const needs = { ...values, needed: `${plain(needed)} ${unit}` };
  if (needed.gt(written.value)) return [problem("dispensed-too-little", at("dispense"), { ...needs, context: "" })];
  if (needed.times(mostTimes(unit)).gt(written.value)) return [];
  return [problem("dispensed-too-much", at("dispense"), needs)];
}
