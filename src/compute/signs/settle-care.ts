import type { Plan, PlannedCare } from "#plan/plan.js";
import { nearest } from "#problems/near.js";
import { type Place, placeOf } from "#problems/place.js";
import { type Outcome, type Problem, problem } from "#problems/problem.js";
import type { Bandage } from "#tables/bandages.js";
import type { Topic } from "#tables/topic.js";
import type { CareTables } from "#tables/topics.js";
import { fitsPatient } from "./fits-patient.js";
import { named } from "./named.js";
import { type BodyPlace, readSite } from "./read-site.js";

/** One line of a plan's care with its words understood, and where they stand. */
export type SettledCare = {
  topic: Topic;
  where: BodyPlace | null;
  bandage: Bandage | null;
  at: { topic: Place; bandage: Place };
};

/** Understands the topic, the site and the bandage of one line of care; null when one of them is not known. */
export function settleCare(plan: Plan, index: number, care: PlannedCare, tables: CareTables): Outcome<SettledCare> {
  const placed = (field: string) => placeOf(plan.places, "care", index, field);
  const at = { topic: placed("topic"), bandage: placed("bandage") };

  const topic = named(care.topic, tables.topics);
  const where = care.site === undefined ? null : readSite(care.site, tables.sites, placed("site"));
  const bandage = care.bandage === undefined ? null : readBandage(care.bandage, tables.bandages, at.bandage);
  const problems = [...(where?.problems ?? []), ...(bandage?.problems ?? [])];
  if (!topic) {
    const known = tables.topics.map(({ id }) => id);
    const values = { given: care.topic, near: nearest(care.topic, known), known };
    return { value: null, problems: [problem("topic-unknown", at.topic, values), ...problems] };
  }

  problems.push(
    ...fitsPatient(topic, plan.patient, at.topic),
    ...checkSite(topic, care, at.topic, placed("site")),
    ...checkBandage(topic, care, at, tables),
    ...checkHold(where?.value ?? null, bandage?.value ?? null, at.bandage),
  );
  if (topic.course === "needed" && care.course.length === 0)
    problems.push(problem("course-missing", at.topic, { topic: topic.id, usual: topic.usualCourse.join("; ") }));

  const understood = where?.value !== null && bandage?.value !== null;
  return {
    value: understood ? { topic, where: where?.value ?? null, bandage: bandage?.value ?? null, at } : null,
    problems,
  };
}

function readBandage(given: string, bandages: readonly Bandage[], at: Place): Outcome<Bandage> {
  const bandage = named(given, bandages);
  if (bandage) return { value: bandage, problems: [] };
  const known = bandages.map(({ id }) => id);
  return { value: null, problems: [problem("bandage-unknown", at, { given, near: nearest(given, known), known })] };
}

function checkSite({ id, site }: Topic, care: PlannedCare, atTopic: Place, atSite: Place): Problem[] {
  if (site === "needed" && care.site === undefined) return [problem("site-missing", atTopic, { topic: id })];
  if (site === "none" && care.site !== undefined) return [problem("site-not-for-topic", atSite, { topic: id })];
  return [];
}

const bandaged = (topics: readonly Topic[]) => topics.flatMap(({ id, bandage }) => (bandage === "none" ? [] : id));

function checkBandage(
  topic: Topic,
  care: PlannedCare,
  at: SettledCare["at"],
  { bandages, topics }: CareTables,
): Problem[] {
  if (topic.bandage === "needed" && care.bandage === undefined)
    return [problem("bandage-missing", at.topic, { topic: topic.id, known: bandages.map(({ id }) => id) })];
  if (topic.bandage === "none" && care.bandage !== undefined)
    return [problem("bandage-not-for-topic", at.bandage, { topic: topic.id, known: bandaged(topics) })];
  return [];
}

/** A limb wrap on a cheek is more often a slip of the pen than a bandage. */
function checkHold(where: BodyPlace | null, bandage: Bandage | null, at: Place): Problem[] {
  if (!where || !bandage || bandage.regions.includes(where.site.region)) return [];
  return [problem("bandage-not-for-site", at, { bandage: bandage.id, site: where.site.id })];
}
