import type { Plan } from "#plan/plan.js";
import { type Place, placeOf } from "#problems/place.js";
import type { Says } from "#tables/statements.js";
import type { CareTables } from "#tables/topics.js";
import { additionHolds } from "./addition-holds.js";
import type { SettledCare } from "./settle-care.js";

/**
 * One voice in the care: what it says, for which line of care, and the words of the plan that called it in. by: who says so,
 * the topic, or what the animal is ("diabetic"), and where the plan has that.
 */
export type Saying = { says: Says; care: SettledCare; from: Place; by: { name: string; at: Place } };

/** Everything that is said about one line of care: by its topic, its bandage, and what its site and what the animal is add. */
export function sayingsOf(
  care: SettledCare,
  { patient, places }: Plan,
  is: readonly string[],
  tables: CareTables,
): Saying[] {
  const { topic, bandage, at } = care;
  const says = (says: Says, from = at.topic, by = { name: topic.id, at: from }): Saying => ({ says, care, from, by });
  const byAnimal = (animals: readonly string[]) => ({
    name: animals.filter((one) => is.includes(one)).join(", "),
    at: placeOf(places, "patient", "conditions"),
  });
  const additions = tables.additions.filter((addition) => additionHolds(addition, care, patient, is));
  return [
    says(topic),
    ...(bandage ? [says(bandage, at.bandage)] : []),
    ...additions.map((one) => says(one, at.topic, one.when.animal && byAnimal(one.when.animal))),
  ];
}
