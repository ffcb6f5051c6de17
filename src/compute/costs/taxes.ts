import type { Clinic } from "#plan/plan.js";
import { type Places, placeOf } from "#problems/place.js";
import { type Problem, problem } from "#problems/problem.js";
import type { Told } from "../facts.js";
import { toldIn } from "../told.js";
import { keyOf } from "./key.js";

/** percent: "6.25". inclusive: prices already hold it. */
export type Tax = { name: Told; percent: string; inclusive: boolean };

/** The taxes of a clinic, in its own order; each has a name of its own in every language. Problem: "tax-twice". */
export function taxesOf(clinic: Clinic, places: Places): { taxes: Tax[]; problems: Problem[] } {
  const taxes = clinic.taxes.map(
    ({ name, rate, inclusive }): Tax => ({
      name: toldIn(name, clinic.language),
      percent: rate,
      inclusive: inclusive === "yes",
    }),
  );
  const problems = taxes.flatMap((tax, index) => {
    const again = namesOf(tax).find((name) => taxes.slice(0, index).some((before) => isCalled(before, name)));
    return again === undefined
      ? []
      : [problem("tax-twice", placeOf(places, "clinic", "taxes", index, "name"), { tax: again })];
  });
  return { taxes, problems };
}

export const namesOf = ({ name }: Tax): string[] => Object.values(name);

/** Whether a price means this tax by a name, in whichever language. */
export const isCalled = (tax: Tax, name: string): boolean => namesOf(tax).some((own) => keyOf(own) === keyOf(name));
