import { type Problem, problem } from "#problems/problem.js";
import type { Regimen } from "#tables/medicines.js";
import { kilograms, shown, told } from "../exact.js";
import type { Dosing } from "./dosing.js";

/** The animal is of the weight and the age that a rule is for. */
export function animalOutside({ weight, months, source }: Regimen, { asked, step }: Dosing): Problem[] {
  const at = asked.at(...step.path);
  const medicine = asked.planned.name;
  const problems: Problem[] = [];
  const least = weight?.least ?? null;
  const most = weight?.most ?? null;
  const outside = (least && asked.kg.lt(kilograms(least))) || (most && asked.kg.gt(kilograms(most)));
  if (outside) {
    const limit = [least, most].flatMap((end) => (end ? [told(end)] : [])).join("-");
    problems.push(problem("weight-outside-limit", at, { medicine, given: `${shown(asked.kg)} kg`, limit, source }));
  }
  if (months && asked.months !== null) {
    const tooYoung = months.least !== null && asked.months < months.least;
    const tooOld = months.most !== null && asked.months > months.most;
    const values = { medicine, months: asked.months, limit: ageText(months), source };
    if (tooYoung || tooOld) problems.push(problem("age-outside-limit", at, values));
  }
  return problems;
}

/** A rule for an age is worth a look where the plan does not say how old the animal is. */
export function ageUnknown({ months, source }: Regimen, { asked, step }: Dosing): Problem[] {
  if (!months || asked.months !== null) return [];
  const values = { medicine: asked.planned.name, limit: ageText(months), source };
  return [problem("age-unknown", asked.at(...step.path), values)];
}

const ageText = ({ least, most }: NonNullable<Regimen["months"]>) =>
  most === null ? `${least ?? 0}+` : `${least ?? 0}-${most}`;
