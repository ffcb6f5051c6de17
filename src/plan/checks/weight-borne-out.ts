import { Decimal } from "decimal.js";
import { placeOf } from "#problems/place.js";
import { type Problem, problem } from "#problems/problem.js";
import type { Plan, PlannedMedicine } from "../plan.js";
import { isWithin, kilograms, weightRange } from "./weight.js";

/**
 * Centimetres of neck over the cube root of kilograms: bodies of one shape grow in all three directions. From memory of
 * size charts for neck collars: 25 cm at 3 kg, 40 cm at 25 kg, 60 cm at 70 kg lie near 15; sighthounds and lean cats near 12,
 * short-nosed breeds near 19. The widest weights it allows are less than tenfold apart, so a slip of the point is seen.
 */
const neck = { least: "10.5", most: "22" };
/** More tablets than this at one time are asked about for themselves (compute/doses/plausible.ts). */
const fewPieces = 4;
/** An animal seldom gains or loses more than this share between visits; common practice, no source. */
const mostChange = "0.4";

/**
 * Whether something else in the plan bears the weight out: the neck measured for the collar, or what it weighed before. A
 * liquid or insulin can be drawn up in any amount, so a slip of the point would be seen nowhere else; the clinician is asked
 * for it.
 */
export function checkWeightBorneOut(plan: Plan): Problem[] {
  const { weight, "weight before": before } = plan.patient;
  const at = placeOf(plan.places, "patient", "weight");
  const given = { weight: `${weight.value} ${weight.unit}` };
  const kg = kilograms(weight);
  const problems: Problem[] = [];
  if (plan.collar) {
    const size = plan.collar.neck;
    const around = new Decimal(size.value).times({ cm: "1", mm: "0.1", in: "2.54" }[size.unit]);
    const [least, most] = [around.div(neck.most).pow(3), around.div(neck.least).pow(3)];
    const values = { ...given, neck: `${size.value} ${size.unit}`, least: oneDecimal(least), most: oneDecimal(most) };
    if (kg.lt(least) || kg.gt(most)) problems.push(problem("weight-not-of-neck", at, values));
  }
  if (before && kg.div(kilograms(before)).minus(1).abs().gt(mostChange))
    problems.push(problem("weight-changed", at, { ...given, before: `${before.value} ${before.unit}` }));
  if (plan.collar || before) return problems;
  const drawn = plan.medicines.find((medicine) => goesByWeightAlone(medicine, kg));
  const slipped = [kg.times(10), kg.div(10)].some((other) => isWithin(other, weightRange(plan)));
  return drawn && slipped ? [problem("weight-not-borne-out", at, { ...given, medicine: drawn.name })] : problems;
}

/**
 * A dose written beside what to give bears the weight out. So do whole and half tablets, which come in too few sizes to be
 * ten times off: but not more of them than anybody gives at once, and not where the dose goes by the skin, of which an animal
 * of ten times the weight has less than five times as much.
 */
function goesByWeightAlone(medicine: PlannedMedicine, kg: Decimal): boolean {
  const { tablet, capsule, splits, next } = medicine;
  const size = tablet ?? capsule;
  return [medicine, ...next].some(({ dose, give }) => {
    const [, by] = /\/(kg|lb|m2)$/.exec(dose?.unit ?? "") ?? [];
    if (!dose || !by || give) return false;
    const ordered = kg.div(by === "lb" ? kilograms({ value: "1", unit: "lb" }) : 1).times(dose.value);
    return by === "m2" || splits === "quarters" || !size || ordered.div(size.value).gt(fewPieces);
  });
}

const oneDecimal = (kg: Decimal) => `${kg.toDecimalPlaces(1).toString()} kg`;
