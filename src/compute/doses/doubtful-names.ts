import type { Plan } from "#plan/plan.js";
import { type Place, placeOf } from "#problems/place.js";
import { type Problem, problem } from "#problems/problem.js";
import type { MedicineRow } from "#tables/medicines.js";
import { misspelt } from "./misspelt.js";

/** A name as it was written, and that it is doubted. */
type Doubt = { name: string; problem: Problem };

/** Medicines given, taken or not borne that go by a name much like one the table knows: a slip would lose all that is known of it. */
export function doubtfulNames({ medicines, patient, places }: Plan, table: readonly MedicineRow[]): Doubt[] {
  const asked = (name: string, at: Place): Doubt[] => {
    const near = misspelt(name, table);
    return near.length > 0 ? [{ name, problem: problem("medicine-misspelt", at, { medicine: name, near }) }] : [];
  };
  return [
    ...medicines.flatMap(({ name }, i) => asked(name, placeOf(places, "medicines", i, "name"))),
    ...patient.takes.flatMap((name, i) => asked(name, placeOf(places, "patient", "takes", i))),
    ...patient.allergies.flatMap((name, i) => asked(name, placeOf(places, "patient", "allergies", i))),
  ];
}
