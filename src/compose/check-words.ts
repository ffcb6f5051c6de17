import type { Locales, Messages } from "#locale/locales.js";
import { baseOf, isOriginal } from "#locale/source.js";
import { placeholders } from "#locale/words.js";
import { nearest } from "#problems/near.js";
import type { Place } from "#problems/place.js";
import { type Problem, problem } from "#problems/problem.js";

/** Every message may show these without a template giving them (./page.ts). */
const always = ["name", "context"];

/**
 * Whether the source and its variants have the words a template asks for by a literal key, and the template gives what they
 * show. A translation is held to the source by the guards: a gap in one stops pages in it, and none in another language.
 * given: the names of the values; contexts: the words `context` can be, where a template says it.
 */
export function checkWords(
  locales: Locales,
  key: string,
  given: string[],
  contexts: string[] | null,
  at: Place,
): Problem[] {
  const originals = locales.tags.filter((tag) => isOriginal(tag, locales.tags));
  return originals.flatMap((language) => {
    const { messages, byKey } = wordsOf(locales, language);
    const forms = byKey.get(key) ?? [];
    const missing = (contexts ?? []).filter((context) => !has(forms, key) && !has(forms, `${key}_${context}`));
    if (forms.length === 0 || missing.length > 0) {
      const asked = missing[0] === undefined ? key : `${key}_${missing[0]}`;
      return [
        problem("template-words-unknown", at, { key: asked, language, near: nearest(key, [...messages.keys()]) }),
      ];
    }
    const shown = new Set(forms.flatMap((form) => placeholders(messages.get(form) ?? "")));
    return [...shown]
      .filter((value) => !given.includes(value) && !always.includes(value))
      .map((value) => problem("template-value-missing", at, { key, value, language }));
  });
}

const plurals = ["zero", "one", "two", "few", "many", "other"];

const has = (forms: string[], key: string): boolean =>
  forms.includes(key) || plurals.some((plural) => forms.includes(`${key}_${plural}`));

/** byKey: the message of a key itself, its plurals and contexts: key, key_one, key_female, key_female_one. */
type Words = { messages: Map<string, string>; byKey: Map<string, string[]> };

const known = new WeakMap<Locales["messages"][string], Words>();

/** All that a language says: a variant ("en-GB") says the rest as its base does. */
function wordsOf(locales: Locales, language: string): Words {
  const own = locales.messages[language] ?? {};
  const before = known.get(own);
  if (before) return before;
  const base = baseOf(language, locales.tags);
  const messages = new Map([...(base ? wordsOf(locales, base).messages : []), ...flat(own)]);
  const byKey = new Map<string, string[]>();
  for (const name of messages.keys())
    for (const key of stemsOf(name)) {
      const forms = byKey.get(key);
      if (forms) forms.push(name);
      else byKey.set(key, [name]);
    }
  const words = { messages, byKey };
  known.set(own, words);
  return words;
}

/** "a_b_c": "a", "a_b" and "a_b_c". */
const stemsOf = (name: string): string[] => {
  const parts = name.split("_");
  return parts.map((_, i) => parts.slice(0, i + 1).join("_"));
};

/** Messages by whole key, "handout:ring.title". */
function flat(namespaces: Record<string, Messages>): Map<string, string> {
  const all = new Map<string, string>();
  const add = (prefix: string, messages: Messages) => {
    for (const [name, message] of Object.entries(messages))
      if (typeof message === "string") all.set(`${prefix}${name}`, message);
      else add(`${prefix}${name}.`, message);
  };
  for (const [namespace, messages] of Object.entries(namespaces)) add(`${namespace}:`, messages);
  return all;
}
