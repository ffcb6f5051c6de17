import { Decimal } from "decimal.js";
import type { Measure } from "#tables/reading.js";
import { wordsIn } from "./split.js";
import { syllablesOf } from "./syllables.js";

export type Counts = { sentences: number; words: number; syllables: number };

/** names: words that the reader knows however long they are, such as the animal's own; they count one syllable. */
export function countsOf(sentences: readonly string[], language: string, names: readonly string[] = []): Counts {
  const words = sentences.flatMap((text) => wordsIn(text, language));
  return {
    sentences: sentences.length,
    words: words.length,
    syllables: words.reduce((sum, word) => sum + (names.includes(word) ? 1 : syllablesOf(word, language)), 0),
  };
}

/** The published formula, exactly. @throws where there is not one word. */
export function scoreOf({ base, perWord, perSyllable }: Measure, { sentences, words, syllables }: Counts): Decimal {
  if (sentences === 0 || words === 0) throw new RangeError("nothing to read");
  const perSentence = new Decimal(words).div(sentences).times(perWord);
  return new Decimal(syllables).div(words).times(perSyllable).plus(perSentence).plus(base);
}

/** Whether a score is as easy as another. */
export const asEasy = ({ easier }: Measure, score: Decimal, as: Decimal.Value): boolean =>
  easier === "lower" ? score.lte(as) : score.gte(as);
