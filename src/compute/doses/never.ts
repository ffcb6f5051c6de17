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

/** Forms that may hold what would poison this animal: a liquid made for people, sweetened with xylitol. */
export function mayHoldPoison(
  { planned, species, at }: Asked,
  rows: readonly MedicineRow[],
  table: readonly MedicineRow[],
) {
  const poisons = table.filter(({ never }) => never.some((rule) => rule.species === species)).map(({ id }) => id);
  return rows.flatMap(({ mayHold }) =>
    mayHold
      .filter(({ id, forms }) => poisons.includes(id) && forms.some((form) => planned[form] !== undefined))
      .map(({ id, source }) => problem("may-hold-poison", at("name"), { medicine: planned.name, context: id, source })),
  );
}
