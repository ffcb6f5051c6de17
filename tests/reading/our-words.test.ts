import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { explainedIn, glossaryOf } from "#reading/glossary.js";
import { faultsOf, sentencesOf } from "#reading/sentence.js";
import { glossary as rows, rules } from "./help.js";

/** What owners read; calendar and units hold no sentences, problems are for staff. */
const namespaces = ["statements", "handout", "medicines", "visits", "calendar"];

/** A value as the page would show it: the name of an animal, an amount, a day. */
const shown = (text: string) =>
  text
    .replaceAll("**", "")
    .replaceAll("{{name}}", "Bramble")
    .replaceAll(/\{\{(minutes|days|hours|time|margin)\}\}/g, "5 min")
    .replaceAll(/\{\{\w+\}\}/g, "5");

function messages(language: string): [string, string][] {
  const flat = (value: unknown, key: string): [string, string][] =>
    typeof value === "string"
      ? [[key, value]]
      : Object.entries(value as object).flatMap(([name, inner]) => flat(inner, `${key}.${name}`));
  return namespaces.flatMap((name) => flat(JSON.parse(readFileSync(`locales/${language}/${name}.json`, "utf8")), name));
}

it.each(rules.filter(({ passive }) => passive))("no sentence of ours is long, hard or passive in $language", (rule) => {
  const glossary = glossaryOf(rows, rule.language);
  const all = messages(rule.language);
  const explained = explainedIn(
    all.map(([, text]) => text),
    glossary,
  );
  const terms = glossary.filter((term) => !explained.has(term));
  const found = all.flatMap(([key, text]) => {
    const at = { file: key, line: 1, column: 1, length: 1 };
    const sentences = sentencesOf({ section: key, text: shown(text), at }, rule.language);
    return sentences
      .flatMap((sentence) => faultsOf(sentence, rule, { terms, names: ["Bramble"] }))
      .map(({ code, values }) => `${key} ${code} ${Object.values(values).join(" | ")}`);
  });
  expect(found).toEqual([]);
});
