import { Decimal } from "decimal.js";
import { placeOf } from "#problems/place.js";
import { type Problem, problem } from "#problems/problem.js";
import type { Plan } from "../plan.js";

/** Kilograms between which a patient that goes home with a handout lies; common practice, no source. */
const plausible = { dog: { least: "0.5", most: "95" }, cat: { least: "0.5", most: "12" } };
/** The international pound, exact by definition. */
const kgPerPound = "0.45359237";

export function checkWeight({ patient: { species, weight }, places }: Plan): Problem[] {
  const kg = new Decimal(weight.value).times(weight.unit === "lb" ? kgPerPound : 1);
  const { least, most } = plausible[species];
  if (kg.gte(least) && kg.lte(most)) return [];
  const values = { weight: `${weight.value} ${weight.unit}`, species, least: `${least} kg`, most: `${most} kg` };
  return [problem("weight-implausible", placeOf(places, "patient", "weight"), values)];
}
