import type { Passive } from "#tables/reading.js";
import { wordsIn } from "./split.js";

/** The first passive of a sentence as it is written there, "is changed"; null where there is none. */
export function passiveIn(sentence: string, language: string, rule: Passive): string | null {
  const words = wordsIn(sentence, language);
  const lower = words.map((word) => word.toLocaleLowerCase(language));
  for (const [first, word] of lower.entries()) {
    if (!rule.auxiliaries.includes(word)) continue;
    let last = first + 1;
    while (rule.between.includes(lower[last] ?? "")) last++;
    if (isParticiple(lower[last] ?? "", rule)) return words.slice(first, last + 1).join(" ");
  }
  return null;
}

const isParticiple = (word: string, { endings, participles, states }: Passive): boolean =>
  !states.includes(word) && (participles.includes(word) || endings.some((ending) => word.endsWith(ending)));
