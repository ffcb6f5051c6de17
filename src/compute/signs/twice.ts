import { placeText } from "#problems/place.js";
import { type Problem, problem } from "#problems/problem.js";
import type { SettledCare } from "./settle-care.js";

/** The same topic at the same site, written twice. */
export const twice = (care: readonly SettledCare[]): Problem[] =>
  care.flatMap((one, i) => {
    const first = care.slice(0, i).find((earlier) => keyOf(earlier) === keyOf(one));
    return first
      ? [problem("topic-twice", one.at.topic, { topic: one.topic.id, first: placeText(first.at.topic) })]
      : [];
  });

const keyOf = ({ topic, where }: SettledCare) => JSON.stringify([topic.id, where?.site.id, where?.side]);
