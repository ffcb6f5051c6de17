import type { Plan } from "#plan/plan.js";
import { type Problem, problem } from "#problems/problem.js";
import type { MedicineRow } from "#tables/medicines.js";
import { simple } from "#tables/simple.js";
import type { Asked } from "./asked.js";
import { namedIn } from "./find.js";

/** An allergy to a medicine holds for all of its groups, and an allergy to a group for all that are in it. */
export function allergyProblems(
  { patient }: Plan,
  asked: Asked,
  rows: readonly MedicineRow[],
  table: readonly MedicineRow[],
): Problem[] {
  const families = new Set(rows.flatMap(({ id, groups }) => [id, ...groups.map((group) => group.id)]));
  return patient.allergies
    .filter((allergy) => familiesOf(allergy, table).some((family) => families.has(family)) || isNamed(allergy, asked))
    .map((allergy) => problem("allergy-known", asked.at("name"), { medicine: asked.planned.name, allergy }));
}

function familiesOf(allergy: string, table: readonly MedicineRow[]): string[] {
  const text = ` ${simple(allergy)} `;
  const groups = table
    .flatMap((row) => row.groups)
    .filter(({ names }) => names.some((name) => text.includes(` ${name} `)));
  const rows = namedIn(allergy, table);
  return [...groups.map(({ id }) => id), ...rows.flatMap(({ id, groups }) => [id, ...groups.map((group) => group.id)])];
}

/** A medicine the table does not hold may still stand among the allergies. */
const isNamed = (allergy: string, { planned }: Asked) => ` ${simple(planned.name)} `.includes(` ${simple(allergy)} `);
