import { type Problem, problem } from "#problems/problem.js";
import type { Locales } from "../locales.js";
import { baseOf } from "../source.js";
import { checkFigures } from "./figures.js";
import { checkLength } from "./length.js";
import { checkMarkup } from "./markup.js";
import { placeInJson } from "./place.js";
import { checkContexts, checkPlurals } from "./plurals.js";
import { type Rules, rulesOf } from "./rules.js";
import type { Finding, Form, Guard, Sentence } from "./sentence.js";
import { sentencesOf } from "./sentences.js";
import { checkUntranslated } from "./untranslated.js";
import { checkValues } from "./values.js";

const guards: Guard[] = [
  checkPlurals,
  checkContexts,
  checkValues,
  checkMarkup,
  checkFigures,
  checkUntranslated,
  checkLength,
];

/**
 * What is wrong with a language as a translation of the source, each with its place in its file. A variant ("en-GB" where
 * there is "en") says only what it says otherwise. The source itself is held to its own plurals and markup.
 */
export function guardTranslation(locales: Locales, tag: string): Problem[] {
  const rules = rulesOf(locales, tag);
  const isVariant = baseOf(tag, locales.tags) !== null;
  return sentencesOf(locales, tag).flatMap((sentence) =>
    findingsOf(sentence, rules, isVariant).map(({ form, found }) =>
      problem(
        found.code,
        placeInJson(sentence.file, locales.texts[sentence.file] ?? "", form?.path ?? []),
        found.values as never,
      ),
    ),
  );
}

function findingsOf(sentence: Sentence, rules: Rules, isVariant: boolean): Finding[] {
  const { name, own } = sentence;
  if (own.length === 0) return isVariant ? [] : [missing("translation-missing", name, null)];
  if (sentence.source.length === 0) return [missing("translation-extra", name, own[0] ?? null)];
  return guards.flatMap((guard) => guard(sentence, rules));
}

const missing = (code: "translation-missing" | "translation-extra", key: string, form: Form | null): Finding => ({
  form,
  found: { code, values: { key } },
});
