import type { Plan } from "#plan/plan.js";
import { type Outcome, stops } from "#problems/problem.js";
import type { CareTables } from "#tables/topics.js";
import type { Care, Day, Facts } from "../facts.js";
import { againstOwnWords } from "./against-own-words.js";
import { animalIs } from "./animal-is.js";
import { contradictions } from "./contradictions.js";
import { doubtful } from "./doubtful.js";
import { mergeList, mergeSigns, mergeSteps } from "./merge.js";
import { withoutNeedless } from "./needless.js";
import { type Saying, sayingsOf } from "./sayings.js";
import { type SettledCare, settleCare } from "./settle-care.js";
import { twice } from "./twice.js";

/**
 * The care at home: what was done, steps, what is normal, signs, what to avoid and what is needed, merged from every topic
 * of the plan, its bandages, and what sites and the animal add. No statement stands twice, and none that a stronger one makes needless.
 */
export function computeCare(
  plan: Plan,
  tables: CareTables,
): Outcome<Pick<Facts, "care" | "signs" | "normal" | "steps" | "avoid" | "supplies" | "ends">> {
  const animal = animalIs(plan, tables.animals);
  const is = animal.value ?? [];
  const read = plan.care.map((care, index) => settleCare(plan, index, care, tables));
  const settled = read.flatMap(({ value }) => value ?? []);
  const voices = settled.map((care) => sayingsOf(care, plan, is, tables));
  const everything = voices.flat();
  const problems = [
    ...animal.problems,
    ...read.flatMap((one) => one.problems),
    ...twice(settled),
    ...doubtful(settled, is),
    ...contradictions(everything, tables.conflicts),
    ...againstOwnWords(plan, everything, tables.ownWords),
  ];
  if (stops(problems)) return { value: null, problems };

  const { statements } = tables;
  const sayings = withoutNeedless(everything, tables.stronger);
  const list = (name: "normal" | "avoid" | "supplies" | "ends") => mergeList(name, sayings, statements);
  return {
    value: {
      care: settled.map((care, i) => careOf(care, voices[i] ?? [], tables, plan.discharged.slice(0, 10))),
      steps: mergeSteps(sayings, statements),
      normal: list("normal"),
      signs: mergeSigns(sayings, statements),
      avoid: list("avoid"),
      supplies: list("supplies"),
      ends: list("ends"),
    },
    problems,
  };
}

const careOf = (
  { topic, where, bandage, at }: SettledCare,
  said: Saying[],
  { statements }: CareTables,
  since: Day,
): Care => ({
  topic: topic.id,
  site: where?.site.id ?? null,
  side: where?.side ?? null,
  bandage: bandage?.id ?? null,
  since,
  done: mergeList("done", said, statements),
  from: at.topic,
});
