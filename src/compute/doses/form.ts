import type { PlannedMedicine } from "#plan/plan.js";
import { type Outcome, problem } from "#problems/problem.js";
import type { Amount } from "../facts.js";
import type { Asked } from "./asked.js";
import { Exact } from "./exact.js";
import { insulinForm } from "./insulin.js";
import type { Form } from "./made-up.js";

const splits = { whole: "1", halves: "0.5", quarters: "0.25" };
/** Syringes for small amounts are marked in tenths of a millilitre; common practice, no source. */
const usualGraduation = "0.1";
/** An ointment is told in applications, or in lengths of what is pressed out: 0.5 cm, a quarter of an inch. */
const ribbons: Record<string, string> = { cm: "0.5", in: "0.25" };

/** The one form a plan names. Tablets of which nothing is said are given whole. Problems: form-missing, form-twice, syringe-. */
export function formOf(asked: Asked): Outcome<Form> {
  const { planned, at } = asked;
  const medicine = planned.name;
  const forms = formsOf(planned);
  const kinds = [...forms.map(({ kind }) => kind), ...(planned.insulin ? ["insulin"] : [])];
  if (kinds.length > 1) return { value: null, problems: [problem("form-twice", at(), { medicine, forms: kinds })] };
  if (planned.insulin) return insulinForm(asked, planned.insulin);
  const [form = null] = forms;
  if (!form) return { value: null, problems: [problem("form-missing", at(), { medicine })] };
  const ofInsulin =
    typeof planned.syringe === "string" ? [problem("syringe-for-insulin", at("syringe"), { medicine })] : [];
  return { value: ofInsulin.length > 0 ? null : form, problems: ofInsulin };
}

function formsOf({ tablet, capsule, liquid, give, splits: cut, syringe, ...planned }: PlannedMedicine): Form[] {
  const one = new Exact(1);
  const solid = (kind: "tablet" | "capsule", step: Exact, holds: Amount): Form => ({
    kind,
    unit: kind,
    step,
    strength: holds,
    holds,
    container: null,
  });
  const counted = (kind: Form["kind"], unit: string, container: Form["container"], step = one): Form => ({
    kind,
    unit,
    step,
    strength: null,
    holds: null,
    container,
  });
  const forms: Form[] = [];
  if (tablet) forms.push(solid("tablet", new Exact(splits[cut ?? "whole"]), tablet));
  if (capsule) forms.push(solid("capsule", one, capsule));
  if (liquid) {
    const holds = { value: liquid.value, unit: liquid.unit.replace("/mL", "") };
    const step = new Exact(typeof syringe === "object" ? syringe.value : usualGraduation);
    forms.push({ kind: "liquid", unit: "mL", step, strength: liquid, holds, container: null });
  }
  if (planned.drops) forms.push(counted("drops", "drop", "bottle"));
  if (planned.spray) forms.push(counted("spray", "spray", "bottle"));
  if (planned.patch) forms.push(counted("patch", "patch", null));
  if (planned.ointment) {
    const ribbon = ribbons[give?.unit ?? ""];
    const [unit, step] = ribbon && give ? [give.unit, new Exact(ribbon)] : ["application", one];
    forms.push(counted("ointment", unit, "tube", step));
  }
  return forms;
}
