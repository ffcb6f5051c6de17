import { type Place, within } from "#problems/place.js";
import { type Problem, problem } from "#problems/problem.js";
import type { ReadingRule } from "#tables/reading.js";
import { hardWords, type Term } from "./glossary.js";
import { passiveIn } from "./passive.js";
import { asEasy, countsOf, scoreOf } from "./score.js";
import { sentencesIn, wordsIn } from "./split.js";

/** A text with the title it stands under and the place of its first letter. */
export type Text = { section: string; text: string; at: Place };
export type Sentence = Text;

/** The sentences of a text, each at its own place where the text was written on one line. */
export const sentencesOf = ({ section, text, at }: Text, language: string): Sentence[] =>
  sentencesIn(text, language).map((found) => ({
    section,
    text: found.text,
    at: at.length === text.length ? within(at, found.index, found.text.length) : at,
  }));

/**
 * The formulas are made for passages of a hundred words (Flesch 1948): one long word in a short sentence says little of how
 * hard it is. From this many words on a sentence is judged alone.
 */
const fewestWords = 8;

/** What makes a sentence hard besides its length: the hard words that nothing explains; names are never hard. */
export type Vocabulary = { terms: readonly Term[]; names: readonly string[] };

/** What makes one sentence hard. */
export function faultsOf(sentence: Sentence, rule: ReadingRule, { terms, names }: Vocabulary): Problem[] {
  const { language } = rule;
  const { text, section, at } = sentence;
  const words = wordsIn(text, language).length;
  const { most } = rule.sentence;
  const passive = rule.passive && passiveIn(text, language, rule.passive);
  return [
    ...(words > most ? [problem("sentence-long", at, { sentence: text, section, words, most })] : []),
    ...(words >= fewestWords ? tooHard(sentence, rule, names) : []),
    ...(passive ? [problem("sentence-passive", at, { sentence: text, section, passive })] : []),
    ...hardWords(text, terms).map(({ given, plain, index }) => {
      const word = at.length === text.length ? within(at, index, given.length) : at;
      return problem("word-hard", word, { given, section, plain });
    }),
  ];
}

/** Too hard by every formula of the language: told by the first. */
function tooHard(
  { text, section, at }: Sentence,
  { language, measures }: ReadingRule,
  names: readonly string[],
): Problem[] {
  const counts = countsOf([text], language, names);
  const scores = measures.map((measure) => ({ measure, score: scoreOf(measure, counts) }));
  const [first] = scores;
  if (!first || scores.some(({ measure, score }) => asEasy(measure, score, measure.limit))) return [];
  const { id, limit } = first.measure;
  const score = first.score.toFixed(1);
  return [problem("sentence-hard", at, { sentence: text, section, measure: id, score, limit })];
}
