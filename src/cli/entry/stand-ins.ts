import type { Choices } from "#index.js";
import type { Answers } from "./answers.js";

/**
 * What stands in for answers that are still to come, so that a plan can be tried before it is whole. Each is chosen to raise
 * no question of its own, and none is ever written.
 */
export function standIns(
  { species = "dog", sex = "female", topic: asked }: Answers,
  { topics }: Choices,
  language: string,
): Answers {
  const plain = sex.endsWith("female") ? "female" : "male";
  const suits = (topic: Choices["topics"][number]) =>
    topic.species.some((one) => one === species) && topic.sex.some((one) => one === plain);
  const topic = topics.find(({ id }) => id === asked) ?? topics.find((one) => suits(one) && one.site !== "needed");
  return {
    ...{ species, sex, name: "-", weight: "4 kg", owner: "-", language, reason: "-", topic: topic?.id ?? "-" },
    ...(topic?.site === "needed" ? { site: "back" } : {}),
    ...(topic?.bandage === "needed" ? { bandage: "tie-over" } : {}),
  };
}
