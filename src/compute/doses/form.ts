import type { PlannedMedicine } from "#plan/plan.js";
import type { Place } from "#problems/place.js";
import { type Outcome, problem } from "#problems/problem.js";
import type { Amount } from "../facts.js";
import { Exact } from "./exact.js";

/** What the medicine is made up as. */
export type Form = {
  kind: "tablet" | "capsule" | "liquid" | "drops" | "ointment";
  /** What is counted when it is given, and the least of it that can be measured out. */
  unit: string;
  step: Exact;
  /** As it stands on the box, "375 mg" or "50 mg/mL"; null where the plan has only words for it. */
  strength: Amount | null;
  /** What a unit of it holds, "375 mg" or "50 mg". */
  holds: Amount | null;
};

const splits = { whole: "1", halves: "0.5", quarters: "0.25" };
/** Syringes for small amounts are marked in tenths of a millilitre; common practice, no source. */
const usualGraduation = "0.1";

/** The one form a plan names. Tablets of which nothing is said are given whole. Problems: form-missing, form-twice. */
export function formOf(planned: PlannedMedicine, at: Place): Outcome<Form> {
  const forms = formsOf(planned);
  const [form = null, ...others] = forms;
  const medicine = planned.name;
  if (!form) return { value: null, problems: [problem("form-missing", at, { medicine })] };
  if (others.length === 0) return { value: form, problems: [] };
  return { value: null, problems: [problem("form-twice", at, { medicine, forms: forms.map(({ kind }) => kind) })] };
}

function formsOf({ tablet, capsule, liquid, drops, ointment, splits: cut, syringe }: PlannedMedicine): Form[] {
  const one = new Exact(1);
  const solid = (kind: "tablet" | "capsule", step: Exact, holds: Amount): Form => ({
    kind,
    unit: kind,
    step,
    strength: holds,
    holds,
  });
  const forms: Form[] = [];
  if (tablet) forms.push(solid("tablet", new Exact(splits[cut ?? "whole"]), tablet));
  if (capsule) forms.push(solid("capsule", one, capsule));
  if (liquid) {
    const holds = { value: liquid.value, unit: liquid.unit.replace("/mL", "") };
    const step = new Exact(syringe?.value ?? usualGraduation);
    forms.push({ kind: "liquid", unit: "mL", step, strength: liquid, holds });
  }
  if (drops) forms.push({ kind: "drops", unit: "drop", step: one, strength: null, holds: null });
  if (ointment) forms.push({ kind: "ointment", unit: "application", step: one, strength: null, holds: null });
  return forms;
}
