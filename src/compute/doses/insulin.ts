import { type Outcome, problem } from "#problems/problem.js";
import type { Amount } from "../facts.js";
import type { Asked } from "./asked.js";
import { Exact, told } from "./exact.js";
import type { Form } from "./made-up.js";

/** Insulin syringes are marked in whole units; half units are hard to see (common practice, no source). */
const step = "1";

/**
 * Insulin is counted in units, in a syringe made for its strength and no other: U-40 insulin in a U-100 syringe is two and a
 * half times too little, and the other way round as much too much. Problems: syringe-missing, syringe-mismatch.
 */
export function insulinForm({ planned, at }: Asked, strength: Amount): Outcome<Form> {
  const medicine = planned.name;
  const { syringe } = planned;
  if (syringe === undefined)
    return { value: null, problems: [problem("syringe-missing", at(), { medicine, strength: told(strength) })] };
  const given = typeof syringe === "string" ? syringe : told(syringe);
  if (typeof syringe !== "string" || !new Exact(syringe.replace("U-", "")).eq(strength.value)) {
    const values = { medicine, strength: told(strength), syringe: given };
    return { value: null, problems: [problem("syringe-mismatch", at("syringe"), values)] };
  }
  const holds = { value: "1", unit: "IU" };
  const form: Form = { kind: "insulin", unit: "unit", step: new Exact(step), strength, holds, container: "vial" };
  return { value: form, problems: [] };
}
