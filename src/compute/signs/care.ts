import type { Plan } from "#plan/plan.js";
import { type Outcome, stops } from "#problems/problem.js";
import type { CareTables } from "#tables/topics.js";
import type { Care, Facts } from "../facts.js";
import { contradictions } from "./contradictions.js";
import { mergeList, mergeSigns, mergeSteps } from "./merge.js";
import { type Saying, sayingsOf } from "./sayings.js";
import { type SettledCare, settleCare } from "./settle-care.js";
import { twice } from "./twice.js";

/**
 * The care at home: what was done, steps, what is normal, signs, what to avoid and what is needed, merged from every topic
 * of the plan, its bandages, and what sites and the animal add. No statement stands twice.
 */
export function computeCare(
  plan: Plan,
  tables: CareTables,
): Outcome<Pick<Facts, "care" | "signs" | "normal" | "steps" | "avoid" | "supplies">> {
  const read = plan.care.map((care, index) => settleCare(plan, index, care, tables));
  const settled = read.flatMap(({ value }) => value ?? []);
  const voices = settled.map((care) => sayingsOf(care, plan, tables));
  const sayings = voices.flat();
  const problems = [
    ...read.flatMap((one) => one.problems),
    ...twice(settled),
    ...contradictions(sayings, tables.conflicts),
  ];
  if (stops(problems)) return { value: null, problems };

  const { statements } = tables;
  const list = (name: "normal" | "avoid" | "supplies") => mergeList(name, sayings, statements);
  return {
    value: {
      care: settled.map((care, i) => careOf(care, voices[i] ?? [], tables)),
      steps: mergeSteps(sayings, statements),
      normal: list("normal"),
      signs: mergeSigns(sayings, statements),
      avoid: list("avoid"),
      supplies: list("supplies"),
    },
    problems,
  };
}

const careOf = ({ topic, where, bandage, at }: SettledCare, said: Saying[], { statements }: CareTables): Care => ({
  topic: topic.id,
  site: where?.site.id ?? null,
  side: where?.side ?? null,
  bandage: bandage?.id ?? null,
  done: mergeList("done", said, statements),
  from: at.topic,
});
