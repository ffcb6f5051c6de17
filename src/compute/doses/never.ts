import { type Problem, problem } from "#problems/problem.js";
import type { MedicineRow } from "#tables/medicines.js";
import type { Asked } from "./asked.js";

/** Substances that would poison this animal, whatever the dose. */
export function neverGiven({ planned, species, at }: Asked, rows: readonly MedicineRow[]): Problem[] {
  return rows.flatMap(({ never }) =>
    never
      .filter((rule) => rule.species === species)
      .map(({ source }) =>
        problem("never-for-species", at("name"), { medicine: planned.name, context: species, source }),
      ),
  );
}
