import type { Clinic } from "#plan/plan.js";
import { type Places, placeOf } from "#problems/place.js";
import { type Problem, problem } from "#problems/problem.js";
import { keyOf } from "./key.js";

/** percent: "6.25". inclusive: prices already hold it. */
export type Tax = { name: string; percent: string; inclusive: boolean };

/** The taxes of a clinic, in its own order. Problem: "tax-twice". */
export function taxesOf(clinic: Clinic, places: Places): { taxes: Tax[]; problems: Problem[] } {
  const names = clinic.taxes.map(({ name }) => keyOf(name));
  const problems = clinic.taxes.flatMap(({ name }, index) =>
    names.indexOf(keyOf(name)) < index
      ? [problem("tax-twice", placeOf(places, "clinic", "taxes", index, "name"), { tax: name })]
      : [],
  );
  const taxes = clinic.taxes.map(({ name, rate, inclusive }) => ({
    name,
    percent: rate,
    inclusive: inclusive === "yes",
  }));
  return { taxes, problems };
}
