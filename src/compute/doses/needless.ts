import type { MedicineRow } from "#tables/medicines.js";
import type { Medicine } from "../facts.js";

/** The medicines without the statements that one said of any of them makes needless. */
export function withoutNeedless(medicines: readonly Medicine[], rows: readonly MedicineRow[]): Medicine[] {
  const said = new Set(medicines.flatMap(({ statements }) => statements.map(({ id }) => id)));
  const rules = rows.flatMap(({ statements }) => statements).filter(({ id }) => said.has(id));
  const needless = new Set(rules.flatMap((rule) => rule.needless));
  return medicines.map((one) => ({ ...one, statements: one.statements.filter(({ id }) => !needless.has(id)) }));
}
