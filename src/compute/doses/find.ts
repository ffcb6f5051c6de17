import type { MedicineRow } from "#tables/medicines.js";
import { simple } from "#tables/simple.js";

/**
 * The medicines named in a piece of text, the one with the longest name first. A name inside a longer one is not meant:
 * "amoxicillin clavulanate" is no amoxicillin, but "tramadol with paracetamol" is both.
 */
export function namedIn(text: string, table: readonly MedicineRow[]): MedicineRow[] {
  const names = table
    .flatMap((row) => row.names.map((name) => ({ row, name })))
    .sort((a, b) => b.name.length - a.name.length);
  let rest = ` ${simple(text)} `;
  const found = new Set<MedicineRow>();
  for (const { row, name } of names)
    if (rest.includes(` ${name} `)) {
      found.add(row);
      rest = rest.replaceAll(` ${name} `, " | ");
    }
  return [...found];
}
