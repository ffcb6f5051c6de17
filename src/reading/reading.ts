import type { Handout } from "#handout/handout.js";
import type { Place } from "#problems/place.js";
import { type Problem, problem } from "#problems/problem.js";
import type { GlossaryRow } from "#tables/glossary.js";
import type { Measure, ReadingRule } from "#tables/reading.js";
import { explainedIn, glossaryOf, type Term } from "./glossary.js";
import { linesOn } from "./lines.js";
import { asEasy, type Counts, countsOf, scoreOf } from "./score.js";
import { faultsOf, sentencesOf, type Vocabulary } from "./sentence.js";
import { wordsIn } from "./split.js";

/** What a page scores by one formula, to one decimal. within: at least as easy as the limit. */
export type Score = { measure: string; score: string; limit: string; aim: string; within: boolean };
/** How easily a page is read: by each formula of its language, and sentence by sentence as notes. */
export type Reading = { language: string; sentences: number; words: number; scores: Score[]; problems: Problem[] };

/** Words somebody wrote by hand, in one language, with the place of their first letter. field: "reason". */
export type Written = { field: string; text: string; language: string; at: Place };

type Known = { rules: readonly ReadingRule[]; glossary: readonly GlossaryRow[] };

/**
 * How easily a whole page is read, by the published formulas of its language, and each sentence and word that is hard, with
 * its place. Words written by hand are measured too, each in its own language. plan: the place of words that follow from no
 * one line of it. Problems, all notes: "page-hard", "sentence-long", "sentence-hard", "sentence-passive", "word-hard";
 * "reading-unknown" where no formula is known for the language, and then there are no scores.
 */
export function readPage(handout: Handout, written: readonly Written[], plan: Place, known: Known): Reading {
  const { language } = handout;
  const lines = linesOn(handout, plan);
  const texts = [...lines, ...written].map(({ text }) => text);
  const { patient, clinic } = handout.running;
  const names = wordsIn(`${patient} ${clinic}`, language);
  const vocabulary = (rule: ReadingRule): Vocabulary => {
    const terms = unexplained(texts, glossaryOf(known.glossary, rule.language));
    return { terms, names };
  };
  const byHand = written.flatMap((one) => {
    const rule = ruleFor(one.language, known.rules);
    if (!rule) return [];
    const sentences = sentencesOf({ ...one, section: one.field }, rule.language);
    const heard = vocabulary(rule);
    return sentences.flatMap((each) => faultsOf(each, rule, heard));
  });

  const rule = ruleFor(language, known.rules);
  if (!rule) {
    const measured = known.rules.map(({ language }) => language);
    const problems = [problem("reading-unknown", plan, { language, known: measured }), ...byHand];
    return { language, sentences: 0, words: 0, scores: [], problems };
  }
  const own = vocabulary(rule);
  const sentences = lines.flatMap((line) => sentencesOf(line, rule.language));
  const ours = sentences.filter(
    ({ text }) => !written.some((one) => one.text.includes(text) || text.includes(one.text)),
  );
  const counts = countsOf(
    sentences.map(({ text }) => text),
    rule.language,
    names,
  );
  const scores = counts.sentences === 0 ? [] : rule.measures.map((measure) => scored(measure, counts));
  const hard = scores
    .filter(({ within }) => !within)
    .map(({ measure, score, limit }) => problem("page-hard", plan, { language, measure, score, limit }));
  return {
    language,
    sentences: counts.sentences,
    words: counts.words,
    scores,
    problems: [...hard, ...byHand, ...ours.flatMap((sentence) => faultsOf(sentence, rule, own))],
  };
}

function scored(measure: Measure, counts: Counts): Score {
  const score = scoreOf(measure, counts);
  const { id, limit, aim } = measure;
  return { measure: id, score: score.toFixed(1), limit, aim, within: asEasy(measure, score, limit) };
}

const ruleFor = (tag: string, rules: readonly ReadingRule[]): ReadingRule | undefined =>
  rules.find(({ language }) => language === new Intl.Locale(tag).language);

/** Hard words that no line of the page says in plain words too. */
function unexplained(texts: readonly string[], glossary: readonly Term[]): Term[] {
  const explained = explainedIn(texts, glossary);
  return glossary.filter((term) => !explained.has(term));
}
