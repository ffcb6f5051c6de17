import { describe, expect, it } from "vitest";
import { newPage } from "#compose/page.js";
import { run } from "#compose/run.js";
import { viewOf } from "#compose/view.js";
import type { Messages } from "#locale/locales.js";
import { speak } from "#locale/voice.js";
import { cat, dog } from "./fixture.js";
import { filesIn, locales, templates } from "./shipped.js";

/** Number words, each a whole word. "one", "un" and "una" are pronoun and article far more often, and are left out. */
const numberWords: Record<string, RegExp> = {
  en: /\b(two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|dozen|twenty|thirty|hundred|(?<!at )once(?! the)|twice|half|third|quarter|quarters|double)\b/i,
  es: /(?<!\p{L})(dos|tres|cuatro|cinco|seis|siete|ocho|nueve|diez|once|doce|docena|veinte|treinta|cien|medio|media|tercio|cuarto|cuartos|doble)(?!\p{L})/iu,
};
const holdsNumber = (text: string, language: string) =>
  /\p{N}/u.test(text) || (numberWords[language]?.test(text) ?? false);

/** Fixed words that hold a number word, and why they may. */
const allowed: Record<string, string> = {
  "units:tablet-part_25": "names the fraction it is chosen by",
  "units:tablet-part_5": "names the fraction it is chosen by",
  "units:tablet-part_75": "names the fraction it is chosen by",
  "units:capsule-part_25": "names the fraction it is chosen by",
  "units:capsule-part_5": "names the fraction it is chosen by",
  "units:capsule-part_75": "names the fraction it is chosen by",
};
/** The words composing owns; those of the tables (statements, medicines, visits) have a source on their row. */
const namespaces = ["handout", "calendar", "units", "drawings", "language"];

function* messagesIn(prefix: string, messages: Messages): Generator<[string, string]> {
  for (const [name, message] of Object.entries(messages))
    if (typeof message === "string") yield [prefix + name, message];
    else yield* messagesIn(`${prefix}${name}.`, message);
}

describe("no number on the page is made up by a template", () => {
  it("templates hold no words at all: every word is said from a locale, every value from the facts", () => {
    for (const [file, text] of Object.entries(filesIn("templates"))) {
      const bare = text
        .replace(/\{\{[\s\S]*?\}\}/g, "")
        .replace(/^:{2,}[a-z]*(\{[#.a-z\s-]*\})?$/gm, "")
        .replace(/^1\. /gm, "");
      expect(`${file} ${bare.match(/[\p{L}\p{N}]+/gu)}`).toBe(`${file} null`);
      // Nor is a number handed to a helper.
      for (const [call] of text.matchAll(/\{\{[\s\S]*?\}\}/g)) expect(call).not.toMatch(/[\s=]\d/);
    }
  });

  it.each(locales.tags)("the fixed words of %s hold no number but those that are allowed", (language) => {
    const found = namespaces.flatMap((namespace) =>
      [...messagesIn(`${namespace}:`, locales.messages[language]?.[namespace] ?? {})]
        .filter(([key, message]) => !(key in allowed) && holdsNumber(message.replace(/\{\{\w+\}\}/g, ""), language))
        .map(([key, message]) => `${key}: ${message}`),
    );
    expect(found).toEqual([]);
  });

  it.each([
    ["dog", dog, "en"],
    ["dog", dog, "es"],
    ["cat", cat, "en"],
    ["cat", cat, "es"],
  ] as const)("outside its values the page of the %s has none (%#)", (_name, facts, language) => {
    const page = newPage(viewOf(facts), speak(locales, language, facts.country), () => {});
    const outside = run(templates.compiled, page, "handout")
      .markdown.replace(/[\uE000-\uE019]+/gu, "")
      .replace(/^1\. /gm, "");
    const found = outside.split("\n").filter((line) => holdsNumber(line, language));
    expect(outside).toContain("::section{#go-now .urgent}");
    expect(found).toEqual([]);
  });
});

/** Syllables by vowel groups, a silent final e left out; near enough for a grade. */
const syllables = (word: string) =>
  Math.max(
    1,
    (
      word
        .toLowerCase()
        .replace(/e$/, "")
        .match(/[aeiouy]+/g) ?? []
    ).length,
  );

it("the English of the page reads at grade 6 or below (Flesch-Kincaid, Kincaid et al. 1975)", () => {
  const sentences = [...messagesIn("", locales.messages["en"]?.["handout"] ?? {})]
    .flatMap(([, message]) => message.replace(/\{\{\w+\}\}/g, "Bramble").split(/[.?!:]+\s*/))
    .map((sentence) => sentence.match(/[A-Za-z']+/g) ?? [])
    .filter((words) => words.length > 3);
  const words = sentences.flat();
  const grade =
    0.39 * (words.length / sentences.length) +
    11.8 * (words.map(syllables).reduce((a, b) => a + b, 0) / words.length) -
    15.59;
  expect(grade).toBeLessThanOrEqual(6);
});
