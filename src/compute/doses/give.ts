import type { PlannedMedicine } from "#plan/plan.js";
import type { Place } from "#problems/place.js";
import { type Outcome, type Problem, problem } from "#problems/problem.js";
import type { Amount, Medicine } from "../facts.js";
import { Exact, percentFrom, plain, shown, told } from "./exact.js";
import type { Form } from "./made-up.js";
import { mostOf } from "./most-at-once.js";
import { orderedAmount } from "./ordered.js";
import { isStep, toStep } from "./round.js";
import type { Body } from "./surface.js";

/** The part of a plan that says how much: the dose, or what to give. */
export type Order = Pick<PlannedMedicine, "dose" | "give">;
export type Where = { medicine: string; at: Place; dose: Place; give: Place };
/**
 * What is put in the animal each time, in units of the form. holds: what that is of the substance, in the unit of the
 * strength; ordered: what was asked for of it, before rounding. Both null where the strength is not known.
 */
export type Giving = {
  amount: Exact;
  give: Amount;
  holds: Exact | null;
  ordered: Exact | null;
  active: Medicine["active"];
};

/** What can be given may be so many percent off what was ordered before it is asked about; common practice, no source. */
export const roundingPercent = 15;

/** What to give from the dose, to the nearest piece or mark, ties down; or the dose from what to give. Exact. */
export function giving(order: Order, form: Form, body: Body, where: Where): Outcome<Giving> {
  const { medicine } = where;
  if (!order.dose && !order.give) return refused(problem("dose-missing", where.at, { medicine }));
  const given = order.give && fromGive(order.give, form, where);
  const dosed = order.dose && fromDose(order.dose, form, body, where);
  const problems = [...(given?.problems ?? []), ...(dosed?.problems ?? [])];
  const amount = given ? given.value : dosed?.value?.amount;
  if (!amount || dosed?.value === null) return { value: null, problems };

  if (order.dose && dosed) {
    if (order.give && !dosed.value.amount.eq(amount)) {
      const ordered = `${told(order.dose)}: ${plain(dosed.value.amount)} ${form.unit}`;
      problems.push(problem("dose-and-give-differ", where.give, { medicine, ordered, given: told(order.give) }));
    } else problems.push(...farOff(order.dose, dosed.value, form, where));
  }
  return { value: whatIsGiven(amount, dosed?.value.asked ?? null, form, body.kg), problems };
}

function fromGive(give: Amount, form: Form, { medicine, give: at }: Where): Outcome<Exact> {
  const given = told(give);
  if (give.unit !== form.unit)
    return refused(problem("give-in-other-unit", at, { medicine, given, context: form.kind }));
  const amount = new Exact(give.value);
  if (isStep(amount, form.step)) return { value: amount, problems: [] };
  return refused(problem("give-not-measurable", at, { medicine, given, step: `${plain(form.step)} ${form.unit}` }));
}

/** asked: the dose in units of the substance; got: the same after rounding. */
type Dosed = { amount: Exact; asked: Exact; got: Exact };

function fromDose(dose: Amount, form: Form, body: Body, { medicine, dose: at }: Where): Outcome<Dosed> {
  const ordered = orderedAmount(dose, body);
  const { holds, strength } = form;
  if (!holds || !strength) return refused(problem("strength-missing", at, { medicine, dose: told(dose) }));
  const byVolume = ordered.unit === form.unit;
  if (!byVolume && holds.unit !== ordered.unit)
    return refused(problem("strength-in-other-unit", at, { medicine, dose: told(dose), strength: told(strength) }));
  const size = new Exact(holds.value);
  const asked = byVolume ? ordered.amount.times(size) : ordered.amount;
  const amount = toStep(asked.div(size), form.step);
  if (!amount.isZero()) return { value: { amount, asked, got: amount.times(size) }, problems: [] };
  const pieces = shown(asked.div(size));
  const meant = byWeight(dose, form, body);
  return refused(
    meant
      ? problem("per-kg-left-out", at, { medicine, given: told(dose), amount: `${pieces} ${form.unit}`, ...meant })
      : problem("strength-too-strong", at, { medicine, amount: pieces, context: form.kind }),
  );
}

/** A dose for the whole animal that nobody can give, and that would be a sensible one for each kilogram of it. */
function byWeight({ value, unit }: Amount, form: Form, body: Body): { meant: string; would: string } | null {
  if (unit.includes("/") || unit !== form.holds?.unit) return null;
  const meant = { value, unit: `${unit}/kg` };
  const asked = orderedAmount(meant, body).amount.div(form.holds.value);
  const amount = toStep(asked, form.step);
  const near = amount.minus(asked).abs().times(100).lte(asked.times(roundingPercent));
  if (amount.isZero() || !near || amount.gt(mostOf(form, body.kg))) return null;
  return { meant: told(meant), would: `${plain(amount)} ${form.unit}` };
}

function farOff(dose: Amount, { amount, asked, got }: Dosed, form: Form, { medicine, dose: at }: Where): Problem[] {
  if (got.minus(asked).abs().times(100).lte(asked.times(roundingPercent))) return [];
  const given = `${plain(amount)} ${form.unit}`;
  const values = { medicine, ordered: told(dose), given, percent: percentFrom(got, asked), most: roundingPercent };
  return [problem("rounding-too-far", at, values)];
}

function whatIsGiven(amount: Exact, asked: Exact | null, form: Form, kg: Exact): Giving {
  const give = { value: plain(amount), unit: form.unit };
  if (!form.holds) return { amount, give, holds: null, ordered: null, active: null };
  const { value: size, unit } = form.holds;
  const holds = amount.times(size);
  const perKg = (of: Exact) => ({ value: shown(of.div(kg)), unit: `${unit}/kg` });
  const active = {
    amount: { value: plain(holds), unit },
    perKg: perKg(holds),
    orderedPerKg: asked && perKg(asked),
    percentOff: asked && percentFrom(holds, asked),
  };
  return { amount, give, holds, ordered: asked, active };
}

const refused = (problem: Problem): { value: null; problems: Problem[] } => ({ value: null, problems: [problem] });
