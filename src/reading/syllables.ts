import { syllable } from "syllable";
import { frenchSyllables } from "./french.js";
import { germanSyllables } from "./german.js";
import { portugueseSyllables } from "./portuguese.js";
import { spanishSyllables } from "./spanish.js";

const counters: Record<string, (word: string) => number> = {
  de: germanSyllables,
  en: syllable,
  es: spanishSyllables,
  fr: frenchSyllables,
  pt: portugueseSyllables,
};

/** A number or a sign counts as one syllable, as in Flesch's own rule (from memory); a word has at least one. */
export const syllablesOf = (word: string, language: string): number => Math.max(1, counters[language]?.(word) ?? 1);
