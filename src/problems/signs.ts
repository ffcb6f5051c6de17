import { ask, note, stop } from "./kind.js";

type Unknown = { given: string; near: readonly string[]; known: readonly string[] };

/** The care the plan asks for: topics, sites and bandages, and what they say together. */
export const signKinds = {
  "topic-unknown": stop<Unknown>(),
  "topic-not-for-species": stop<{ topic: string; species: string }>(),
  "topic-not-for-sex": stop<{ topic: string; sex: string }>(),
  "topic-doubtful": ask<{ topic: string; condition: string }>(),
  "condition-unknown": stop<Unknown>(),
  "condition-not-for-sex": stop<{ condition: string; sex: string }>(),
  "topic-twice": ask<{ topic: string; first: string }>(),
  "site-missing": stop<{ topic: string }>(),
  "site-not-for-topic": stop<{ topic: string }>(),
  "site-unknown": stop<Unknown>(),
  "side-missing": ask<{ site: string }>(),
  "side-twice": stop<{ given: string }>(),
  "side-not-for-site": stop<{ site: string }>(),
  "bandage-missing": stop<{ topic: string; known: readonly string[] }>(),
  "bandage-not-for-topic": stop<{ topic: string; known: readonly string[] }>(),
  "bandage-unknown": stop<Unknown>(),
  "bandage-not-for-site": ask<{ bandage: string; site: string }>(),
  "course-missing": note<{ topic: string; usual: string }>(),
  "care-contradicts": ask<{ one: string; oneTopic: string; oneAt: string; other: string; otherTopic: string }>(),
  "words-contradict": ask<{ given: string; other: string; topic: string; at: string }>(),
};
