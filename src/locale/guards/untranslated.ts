import type { Rules } from "./rules.js";
import type { Guard } from "./sentence.js";
import { sourceOf } from "./values.js";

/** A letter with an accent is a letter: "até" has no "at" in it. */
const wordsOf = (text: string): string[] =>
  text.replace(/\{\{[^{}]+\}\}/g, " ").match(/\p{Script=Latin}[\p{Script=Latin}\p{M}'’-]*/gu) ?? [];

/** A word or two that a clinician types stand anywhere in a problem; more, after a colon or in brackets. */
const typed = (text: string): string => text.replace(/^[^:：(（“]*/, "");
const fewTyped = 2;

/**
 * No English left over. In a script of its own any Latin word is one; in Latin script a word of the list in
 * locales/en/guard.json, or a whole sentence that is the source's. What a language may use stands in its guard.json, and a
 * problem may quote what is typed in a plan, which is English in every language.
 */
export const checkUntranslated: Guard = ({ name, file, source, own }, rules) => {
  if (rules.isSource) return [];
  const quotes = file.includes("/problems/");
  return own.flatMap((form) => {
    const texts = sourceOf(form, source).map(({ text }) => text);
    const words = [...new Set(texts.includes(form.text) ? sameWords(form.text, rules) : left(form.text, rules))];
    const told = quotes && !texts.includes(form.text) ? unquoted(words, form.text, texts) : words;
    const values = { key: name, words: told };
    return told.length > 0 ? [{ form, found: { code: "translation-untranslated" as const, values } }] : [];
  });
};

const sameWords = (text: string, { words }: Rules): string[] =>
  wordsOf(text).filter((word) => word.length > 3 && !words.has(word.toLowerCase()));

const left = (text: string, { script, english, words }: Rules): string[] =>
  wordsOf(text).filter(
    (word) => !words.has(word.toLowerCase()) && (script === "Latn" ? english.has(word.toLowerCase()) : word.length > 1),
  );

/** The words that are no quotation: not in the source, or too many in a row of words. */
function unquoted(words: string[], text: string, source: string[]): string[] {
  const known = new Set(source.flatMap(wordsOf));
  const quoted = new Set(wordsOf(typed(text)));
  const stray = words.filter((word) => !known.has(word));
  const loose = words.filter((word) => known.has(word) && !quoted.has(word));
  return [...stray, ...(loose.length > fewTyped ? loose : [])];
}
