import { differenceInMonths, lastDayOfMonth, lastDayOfYear, parseISO } from "date-fns";
import type { Plan, PlannedMedicine } from "#plan/plan.js";
import { type Place, placeOf } from "#problems/place.js";
import { simple } from "#tables/simple.js";
import type { LocalTime, Species } from "../facts.js";
import { type Exact, kilograms } from "./exact.js";
import { type Household, usualHousehold } from "./slots.js";

/** One medicine of a plan, with what of the plan bears on it. at: where one of its fields was written, or it as a whole. */
export type Asked = {
  planned: PlannedMedicine;
  /** Unique in the plan: "amoxicillin-clavulanate", and "carprofen-2" where there is a second. */
  id: string;
  species: Species;
  sex: Plan["patient"]["sex"];
  kg: Exact;
  /** Whole months of age on the day of discharge, the fewest that what is known of the birth allows. */
  months: number | null;
  /** When the paper that began it was handed out: its days and doses are counted from there. */
  discharged: LocalTime;
  zone: string;
  household: Household;
  staffLanguage: string;
  at: (...path: (string | number)[]) => Place;
};

export function askedOf(plan: Plan): Asked[] {
  const { patient, clinic, discharged, places } = plan;
  const ids = plan.medicines.map(({ name }) => simple(name).replaceAll(" ", "-") || "medicine");
  return plan.medicines.map((planned, i) => {
    const id = ids[i] ?? "";
    const before = ids.slice(0, i).filter((other) => other === id).length;
    return {
      planned,
      id: before === 0 ? id : `${id}-${before + 1}`,
      species: patient.species,
      sex: patient.sex,
      kg: kilograms(patient.weight),
      months: patient.born === undefined ? null : differenceInMonths(parseISO(discharged), latestBirth(patient.born)),
      discharged: planned.started ?? discharged,
      zone: clinic["time zone"],
      household: plan.household ?? clinic.household ?? usualHousehold,
      staffLanguage: clinic.language,
      at: (...path) => placeOf(places, "medicines", i, ...path),
    };
  });
}

/** The last day a birth written as a year, a month or a day can mean. */
function latestBirth(born: string): Date {
  const day = parseISO(born);
  if (born.length === 4) return lastDayOfYear(day);
  return born.length === 7 ? lastDayOfMonth(day) : day;
}
