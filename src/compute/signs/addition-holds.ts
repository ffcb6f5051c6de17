import type { Plan } from "#plan/plan.js";
import { type Addition, meets } from "#tables/additions.js";
import type { SettledCare } from "./settle-care.js";
import { sexOf } from "./sex-of.js";

/** Whether an addition holds for this line of care of an animal that `is` these things: every line of its "when" must. */
export function additionHolds(
  { when }: Addition,
  { topic, where, bandage }: SettledCare,
  patient: Plan["patient"],
  is: readonly string[],
): boolean {
  return (
    meets(when.traits, topic.traits) &&
    !(when.traitsNot && meets(when.traitsNot, topic.traits)) &&
    meets(when.region, where && [where.site.region]) &&
    meets(when.near, where?.site.near) &&
    meets(when.site, where && [where.site.id]) &&
    meets(when.bandage, bandage && [bandage.id]) &&
    !(when.bandaged === false && bandage) &&
    meets(when.species, [patient.species]) &&
    meets(when.sex, [sexOf(patient)]) &&
    meets(when.animal, is) &&
    !(when.animalNot && meets(when.animalNot, is))
  );
}
