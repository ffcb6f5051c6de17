import type { Plan } from "#plan/plan.js";
import type { Place } from "#problems/place.js";
import { type Problem, problem } from "#problems/problem.js";
import type { Topic } from "#tables/topic.js";
import { sexOf } from "./sex-of.js";

/** A topic is for some animals: no cat topic for a dog, no spay for a male. */
export function fitsPatient(topic: Topic, patient: Plan["patient"], at: Place): Problem[] {
  const problems: Problem[] = [];
  if (!topic.species.includes(patient.species))
    problems.push(problem("topic-not-for-species", at, { topic: topic.id, species: patient.species }));
  if (!topic.sex.includes(sexOf(patient)))
    problems.push(problem("topic-not-for-sex", at, { topic: topic.id, sex: patient.sex }));
  return problems;
}
