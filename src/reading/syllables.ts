import { syllable } from "syllable";
import { spanishSyllables } from "./spanish.js";

const counters: Record<string, (word: string) => number> = { en: syllable, es: spanishSyllables };

/** A number or a sign counts as one syllable, as in Flesch's own rule (from memory); a word has at least one. */
export const syllablesOf = (word: string, language: string): number => Math.max(1, counters[language]?.(word) ?? 1);
