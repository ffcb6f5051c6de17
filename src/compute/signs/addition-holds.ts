import { differenceInMonths, parseISO } from "date-fns";
import type { Plan } from "#plan/plan.js";
import type { Addition } from "#tables/additions.js";
import type { SettledCare } from "./settle-care.js";
import { sexOf } from "./sex-of.js";

/** Whether an addition holds for this animal and this line of its care: every line of its "when" must. */
export function additionHolds({ when }: Addition, care: SettledCare, { patient, discharged }: Plan): boolean {
  const { topic, where, bandage } = care;
  return (
    meets(when.traits, topic.traits) &&
    meets(when.region, where && [where.site.region]) &&
    meets(when.near, where?.site.near) &&
    meets(when.site, where && [where.site.id]) &&
    meets(when.bandage, bandage && [bandage.id]) &&
    !(when.bandaged === false && bandage) &&
    meets(when.species, [patient.species]) &&
    meets(when.sex, [sexOf(patient)]) &&
    mentions(when.breed, [patient.breed ?? ""]) &&
    mentions(when.takes, patient.takes) &&
    (when.youngerThan === undefined || isYounger(when.youngerThan, patient.born, discharged))
  );
}

const meets = <T>(wanted: readonly T[] | undefined, held: readonly T[] | null | undefined) =>
  !wanted || wanted.some((one) => held?.includes(one));

const mentions = (wanted: readonly string[] | undefined, texts: readonly string[]) =>
  !wanted || wanted.some((word) => texts.some((text) => text.toLowerCase().includes(word)));

/** An animal whose birth is not known is not taken for a young one. */
const isYounger = (months: number, born: string | undefined, discharged: string) =>
  born !== undefined && differenceInMonths(parseISO(discharged), parseISO(born)) < months;
