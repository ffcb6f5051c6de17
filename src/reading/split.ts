/** Sentences and words as Unicode bounds them (UAX #29), in the way of a language. */

export type Stretch = { text: string; index: number };

/** What ends a sentence. A line that ends otherwise is a label: a name, a number, opening hours. */
const ended = /[.?!\u2026][)\]"'\u00bb\u201d\u2019]*$/u;

export function sentencesIn(text: string, language: string): Stretch[] {
  return [...segmenter(language, "sentence").segment(text)]
    .map(({ segment, index }) => ({ text: segment.trim(), index: index + segment.search(/\S|$/) }))
    .filter(({ text }) => ended.test(text) && wordsIn(text, language).length > 0);
}

/** Numbers are words too. */
export const wordsIn = (text: string, language: string): string[] =>
  [...segmenter(language, "word").segment(text)].flatMap(({ segment, isWordLike }) => (isWordLike ? [segment] : []));

/** Making one takes far longer than using it, and it never changes. */
const made = new Map<string, Intl.Segmenter>();

function segmenter(language: string, granularity: "sentence" | "word"): Intl.Segmenter {
  const key = `${language} ${granularity}`;
  const segmenter = made.get(key) ?? new Intl.Segmenter(language, { granularity });
  made.set(key, segmenter);
  return segmenter;
}
