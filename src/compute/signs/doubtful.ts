import { type Problem, problem } from "#problems/problem.js";
import type { SettledCare } from "./settle-care.js";

/** Care at home that may not suit such an animal: a young one dries out fast, a diabetic heals badly. */
export const doubtful = (care: readonly SettledCare[], is: readonly string[]): Problem[] =>
  care.flatMap(({ topic, at }) =>
    topic.doubtful
      .filter((id) => is.includes(id))
      .map((condition) => problem("topic-doubtful", at.topic, { topic: topic.id, condition })),
  );
