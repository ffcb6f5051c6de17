import { differenceInMonths, parseISO } from "date-fns";
import { Decimal } from "decimal.js";
import { placeOf } from "#problems/place.js";
import { type Problem, problem } from "#problems/problem.js";
import type { Plan } from "../plan.js";

type Range = { least: string; most: string };

/** Kilograms between which a patient that goes home with a handout lies; common practice, no source. */
const plausible = { dog: { least: "0.5", most: "95" }, cat: { least: "0.5", most: "12" } };
/** The same from a year of age; less than tenfold for cats, so that no slip of the point passes. Common practice, no source. */
const grown = { dog: { least: "1", most: "95" }, cat: { least: "1.8", most: "12" } };
/** The international pound, exact by definition. */
const kgPerPound = "0.45359237";

export const kilograms = ({ value, unit }: Plan["patient"]["weight"]): Decimal =>
  new Decimal(value).times(unit === "lb" ? kgPerPound : 1);

/** What an animal of this kind and age may weigh. */
export function weightRange({ patient: { species, born }, discharged }: Plan): Range {
  // A birth told by its month alone may be that month's last day.
  const isGrown = born !== undefined && differenceInMonths(parseISO(discharged), parseISO(born)) > 12;
  return (isGrown ? grown : plausible)[species];
}

export function checkWeight(plan: Plan): Problem[] {
  const { species, weight } = plan.patient;
  const { least, most } = weightRange(plan);
  if (isWithin(kilograms(weight), { least, most })) return [];
  const values = { weight: `${weight.value} ${weight.unit}`, species, least: `${least} kg`, most: `${most} kg` };
  return [problem("weight-implausible", placeOf(plan.places, "patient", "weight"), values)];
}

export const isWithin = (kg: Decimal, { least, most }: Range): boolean => kg.gte(least) && kg.lte(most);
