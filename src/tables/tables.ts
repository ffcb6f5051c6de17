import type { Outcome } from "#problems/problem.js";
import { alsoCalled } from "./also-called.js";
import { type CashRounding, readCash } from "./cash.js";
import { type GlossaryRow, readGlossary } from "./glossary.js";
import { type Medicines, readMedicines } from "./medicines.js";
import { withNamesGiven } from "./names-given.js";
import { type ReadingRule, readReading } from "./reading.js";
import { together } from "./together.js";
import { type CareTables, readCare } from "./topics.js";
import { readVisitKinds, type VisitKind } from "./visits.js";

/** The reference tables of shared/, checked row by row; every row carries its source. */
export type Tables = {
  visits: VisitKind[];
  medicines: Medicines;
  care: CareTables;
  cash: CashRounding[];
  reading: ReadingRule[];
  glossary: GlossaryRow[];
};

/**
 * files: the text of each file by its path, "shared/visits.json". names: what each language calls medicines, by their ids.
 */
export function openTables(
  files: Record<string, string>,
  names: readonly Record<string, string>[] = [],
): Outcome<Tables> {
  const text = (path: string) => [files[path] ?? "", path] as const;
  const { value, problems } = together({
    visits: readVisitKinds(...text("shared/visits.json")),
    medicines: readMedicines(...text("shared/medicines.json")),
    care: readCare(files),
    cash: readCash(...text("shared/cash.json")),
    glossary: readGlossary(...text("shared/glossary.json")),
    reading: readReading(...text("shared/reading.json")),
  });
  if (!value) return { value, problems };
  const medicines = alsoCalled(value.medicines, names);
  const care = { ...value.care, animals: withNamesGiven(value.care.animals, medicines) };
  return { value: { ...value, medicines, care }, problems };
}
