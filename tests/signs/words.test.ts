import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { tables, wordsOf } from "./help.js";

/** The languages that say every statement themselves; a variant such as en-GB says only what it says otherwise. */
const tags = ["en", "es", "de", "fr", "pt-BR", "vi", "zh-Hans", "ar"];
/** Words a sentence has at most. Vietnamese writes each syllable apart, and a word has about one and a half. */
const longest = (tag: string) => (tag === "vi" ? 30 : 20);
const rows = Object.entries(tables.statements).flatMap(([list, all]) =>
  all.map((row) => ({ key: `${list}.${row.id}`, row })),
);
const placeholders = (text: string) =>
  [...new Set([...text.matchAll(/\{\{(\w+)\}\}/g)].map(([, name]) => name))].sort();

/** Keys with the endings taken off by which a form is chosen: sex, or the side of a site. */
const base = (key: string) => key.replace(/_(male|female|left|right)$/, "");

describe.each(tags)("the words of care in %s", (tag) => {
  const words = wordsOf(tag, "statements");

  it("has words for each statement, and no others", () => {
    expect([...new Set(Object.keys(words).map(base))].sort()).toEqual(rows.map(({ key }) => key).sort());
  });

  it("has both sexes where a statement is worded for one", () => {
    const forms = Object.keys(words).filter((key) => key !== base(key));
    for (const key of forms)
      for (const sex of ["male", "female"]) expect(words).toHaveProperty([`${base(key)}_${sex}`]);
  });

  it("shows each value of a statement, and besides them only the name", () => {
    for (const { key, row } of rows)
      for (const form of Object.keys(words).filter((one) => base(one) === key)) {
        const shown = placeholders(words[form] ?? "").filter((name) => name !== "name");
        expect([form, shown]).toEqual([form, Object.keys(row.values).sort()]);
      }
  });

  it("names each topic, bandage, collar and site", () => {
    const topics = tables.topics.flatMap(({ id }) => [`${id}.name`, `${id}.also`]);
    expect(Object.keys(wordsOf(tag, "topics")).sort()).toEqual(topics.sort());
    expect(Object.keys(wordsOf(tag, "bandages")).sort()).toEqual(tables.bandages.map(({ id }) => `${id}.name`).sort());
    const { kinds, until } = tables.collars;
    const collars = [...Object.values(kinds).map(({ id }) => `${id}.name`), ...until.map(({ id }) => `until.${id}`)];
    expect(Object.keys(wordsOf(tag, "collars")).sort()).toEqual(collars.sort());
    const sites = tables.sites.flatMap(({ id, sides }) =>
      sides === "none" ? [id] : [id, `${id}_left`, `${id}_right`],
    );
    expect(Object.keys(wordsOf(tag, "sites")).sort()).toEqual(sites.sort());
  });

  it("has a few words, and no sentence, to find each topic by, none of them twice", () => {
    const also = Object.entries(wordsOf(tag, "topics")).filter(([key]) => key.endsWith(".also"));
    const wrong = also.filter(([, text]) => {
      const words = text.split(/[,、،] ?/);
      return words.length < 3 || words.length > 8 || new Set(words).size < words.length || !/^[^.!?。:;]+$/.test(text);
    });
    expect(wrong).toEqual([]);
  });

  it("keeps sentences short", () => {
    const sentences = Object.entries(words).flatMap(([key, text]) =>
      text.split(/(?<=[.?!])\s+/).map((one) => ({ key, one })),
    );
    expect(sentences.filter(({ one }) => one.split(/\s+/).length > longest(tag))).toEqual([]);
  });

  it("repeats no sentence under two names", () => {
    const texts = Object.values(words);
    expect(texts.filter((text, i) => texts.indexOf(text) !== i)).toEqual([]);
  });
});

it("puts the words that staff look for a topic by on no page", () => {
  const templates = readdirSync("templates", { recursive: true, encoding: "utf8" }).filter((one) =>
    one.endsWith(".hbs"),
  );
  expect(templates.length).toBeGreaterThan(20);
  for (const one of templates) expect(readFileSync(`templates/${one}`, "utf8"), one).not.toMatch(/"also"|\.also\b/);
});

it("has the same placeholders in English and Spanish, the name too", () => {
  const [en = {}, es = {}] = tags.map((tag) => wordsOf(tag, "statements"));
  for (const [key, text] of Object.entries(es)) {
    const other = en[key] ?? en[base(key)] ?? "";
    expect([key, placeholders(text)]).toEqual([key, placeholders(other)]);
  }
});

it("reads at or under grade 6 in English", () => {
  // Flesch-Kincaid, 0.39 words/sentence + 11.8 syllables/word - 15.59. Syllables are runs of vowels without a silent e: a
  // rough count, and good enough for a bound that the general-purpose text-readability package put at 1.
  const text = Object.values(wordsOf("en", "statements")).join(". ");
  const sentences = text.split(/[.?!]+\s/).length;
  const all = text.match(/[A-Za-z']+/g) ?? [];
  const syllables = all.reduce(
    (sum, word) => sum + Math.max(1, (word.replace(/e$/i, "").match(/[aeiouy]+/gi) ?? []).length),
    0,
  );
  expect(0.39 * (all.length / sentences) + 11.8 * (syllables / all.length) - 15.59).toBeLessThanOrEqual(6);
});

it("says usted and never tú in Spanish", () => {
  const familiar =
    /(?<!\p{L})(tu|tus|tú|ti|contigo|debes|puedes|[Vv]osotros|Usa|Pon|Llama|Lava|Mira|Moja|Limpia)(?!\p{L})/u;
  expect(Object.entries(wordsOf("es", "statements")).filter(([, text]) => familiar.test(text))).toEqual([]);
});

it("says Sie and never du in German", () => {
  const familiar = /(?<!\p{L})([Dd]u|[Dd]ich|[Dd]ir|[Dd]eine?[mnrs]?|[Ee]uch|[Ee]uer|[Ee]ure[mnrs]?)(?!\p{L})/u;
  const all = [...Object.entries(wordsOf("de", "statements")), ...Object.entries(wordsOf("de", "medicines"))];
  expect(all.filter(([, text]) => familiar.test(text))).toEqual([]);
});
