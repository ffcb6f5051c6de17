import type { Plan } from "#plan/plan.js";
import type { Place } from "#problems/place.js";
import type { Says } from "#tables/statements.js";
import type { CareTables } from "#tables/topics.js";
import { additionHolds } from "./addition-holds.js";
import type { SettledCare } from "./settle-care.js";

/** One voice in the care: what it says, for which line of care, and the words of the plan that called it in. */
export type Saying = { says: Says; care: SettledCare; from: Place };

/** Everything that is said about one line of care: by its topic, its bandage, and what its site and what the animal is add. */
export function sayingsOf(care: SettledCare, { patient }: Plan, is: readonly string[], tables: CareTables): Saying[] {
  const { topic, bandage, at } = care;
  const additions = tables.additions.filter((addition) => additionHolds(addition, care, patient, is));
  return [
    { says: topic, care, from: at.topic },
    ...(bandage ? [{ says: bandage, care, from: at.bandage }] : []),
    ...additions.map((addition) => ({ says: addition, care, from: at.topic })),
  ];
}
