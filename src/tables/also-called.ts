import type { Medicines } from "./medicines.js";
import { simple } from "./simple.js";

/**
 * Medicines with what each language calls them as well: who writes "Carprofène" is warned as who writes "carprofen" is.
 * names: of one language each, by the id of the medicine.
 */
export function alsoCalled(medicines: Medicines, names: readonly Record<string, string>[]): Medicines {
  const rows = medicines.rows.map((row) => {
    const written = names.flatMap(({ [row.id]: name }) => (name === undefined ? [] : simple(name)));
    return { ...row, names: [...new Set([...row.names, ...written])] };
  });
  return { ...medicines, rows };
}
