import { type Problem, problem } from "#problems/problem.js";
import type { MedicineRow } from "#tables/medicines.js";
import type { Asked } from "./asked.js";
import { Exact, plain, told } from "./exact.js";
import type { Form } from "./made-up.js";
import { mostOf } from "./most-at-once.js";
import type { Step } from "./steps.js";

/** Syringes for the mouth have up to about 60 marks, and an amount below the third is measured badly; from memory. */
const fewestMarks = 3;
const mostMarks = 60;
/** A longer course than this is asked about where no rule says how long it may be; common practice, no source. */
export const mostDays = 30;

/** An amount that nobody would put into an animal of this size at one time. */
export function manyAtOnce(asked: Asked, form: Form, { giving, path, order }: Step): Problem[] {
  const most = mostOf(form, asked.kg);
  if (giving.amount.lte(most)) return [];
  const values = { medicine: asked.planned.name, given: told(giving.give), most: `${plain(most)} ${form.unit}` };
  return [problem("many-at-once", asked.at(...path, order.give ? "give" : "dose"), values)];
}

/** An amount that falls on the first marks of the syringe, or past its last, is more likely a slip in how it is marked. */
export function unlikelySyringe({ planned, at }: Asked, { kind, step }: Form, { giving }: Step): Problem[] {
  if (typeof planned.syringe !== "object" || kind !== "liquid") return [];
  const marks = giving.amount.div(step);
  if (marks.gte(fewestMarks) && marks.lte(mostMarks)) return [];
  const context = marks.lt(fewestMarks) ? "low" : "high";
  const values = { medicine: planned.name, given: told(giving.give), syringe: told(planned.syringe), context };
  return [problem("syringe-unlikely", at("syringe"), values)];
}

/** A strength that is not sold is more likely a slip of the pen, or made up by a pharmacy. */
export function unlistedStrength(asked: Asked, form: Form, row: MedicineRow): Problem[] {
  const { strength, kind } = form;
  const listed = row.strengths.filter((sold) => sold.form === kind && sold.unit === strength?.unit);
  const known = listed.flatMap(({ values }) => values);
  if (!strength || known.length === 0 || known.some((value) => new Exact(value).eq(strength.value))) return [];
  const values = {
    medicine: asked.planned.name,
    strength: told(strength),
    known: known.map((value) => `${value} ${strength.unit}`),
    source: row.strengthsSource ?? row.source,
  };
  return [problem("strength-unlisted", asked.at(kind), values)];
}

/** A course of many days that no rule bounds. */
export function veryManyDays(asked: Asked, days: number): Problem[] {
  if (days <= mostDays) return [];
  return [problem("days-very-many", asked.at("for"), { medicine: asked.planned.name, days, most: mostDays })];
}
