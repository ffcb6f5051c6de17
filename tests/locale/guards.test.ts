import { readFile } from "node:fs/promises";
import { expect, it } from "vitest";
import { guardTranslation } from "#locale/guards/guards.js";
import { openLocales } from "#locale/locales.js";
import { locales } from "../compose/shipped.js";

it.each(locales.tags)("%s is whole: keys, plurals, contexts, values, numbers, units, markup, words, length", (tag) => {
  const told = guardTranslation(locales, tag).map(
    ({ code, at, values }) => `${at.file}:${at.line} ${code} ${JSON.stringify(values)}`,
  );
  expect(told).toEqual([]);
});

type Words = Record<string, string | Record<string, string>>;
/** What the guards find in one language against one English file. */
function found(tag: string, english: Words, own: Words, guard = {}, file = "handout.json"): string[] {
  const { value } = openLocales({
    [`locales/en/${file}`]: JSON.stringify(english),
    "locales/en/guard.json": JSON.stringify({
      english: ["the", "of", "once", "last", "given", "write", "and", "at", "for"],
    }),
    [`locales/${tag}/${file}`]: JSON.stringify(own, null, 2),
    [`locales/${tag}/guard.json`]: JSON.stringify(guard),
  });
  return value
    ? guardTranslation(value, tag).map(
        ({ code, at, values }) => `${code} ${"key" in values ? values.key : ""} ${at.line}`,
      )
    : ["?"];
}
const sentence = (english: string, own: string, tag = "es", guard = {}) =>
  found(tag, { a: english }, { a: own }, guard).map((line) => line.split(" ")[0]);

it("a key too few or too many is told, with the line of the one too many", () => {
  expect(found("es", { a: "Yes", b: { c: "No" } }, { a: "Sí", d: "Más" })).toEqual([
    "translation-missing handout:b.c 1",
    "translation-extra handout:d 3",
  ]);
});

// CLDR plural rules: Arabic has six categories, Chinese and Vietnamese one, French and Spanish three, German two.
it.each([
  ["ar", ["zero", "one", "two", "few", "many", "other"], "يوم"],
  ["zh-Hans", ["other"], "天"],
  ["vi", ["other"], "ngày"],
  ["fr", ["one", "many", "other"], "jours"],
  ["de", ["one", "other"], "Tage"],
])("%s has each of its plurals and no other", (tag, plurals, word) => {
  const english = { a_one: "{{count}} day", a_other: "{{count}} days" };
  const own = Object.fromEntries(plurals.map((plural) => [`a_${plural}`, `{{count}} ${word}`]));
  expect(found(tag, english, own)).toEqual([]);
  expect(found(tag, english, { ...own, [plurals.includes("two") ? "a" : "a_two"]: `{{count}} ${word}` })).not.toEqual(
    [],
  );
  const { [`a_${plurals[0]}`]: _, ...less } = own;
  expect(found(tag, english, less)).not.toEqual([]);
  expect(found(tag, { a: "A day" }, { a_other: word })).toEqual(["translation-plurals handout:a 2"]);
});

it("a form that means one or two may leave out the number, and no other may", () => {
  const english = { a_one: "{{count}} visit to {{where}}", a_other: "{{count}} visits to {{where}}" };
  const forms = Object.fromEntries(
    ["zero", "one", "two", "few", "many", "other"].map((plural) => [`a_${plural}`, "{{count}} زيارات إلى {{where}}"]),
  );
  expect(found("ar", english, { ...forms, a_two: "زيارتان إلى {{where}}" })).toEqual([]);
  expect(found("ar", english, { ...forms, a_two: "زيارتان" })).toEqual(["translation-values handout:a 4"]);
  expect(found("ar", english, { ...forms, a_few: "زيارات إلى {{where}}" })).toEqual(["translation-values handout:a 5"]);
});

it("contexts are the source's, but the animal's sex is the language's own affair", () => {
  expect(found("es", { a: "Dog" }, { a_female: "Perra", a_male: "Perro" })).toEqual([]);
  expect(found("es", { a_female: "spayed", a_male: "neutered" }, { a: "castrado" })).toEqual([]);
  expect(found("es", { a: "Dog" }, { a_female: "Perra" })).toEqual(["translation-contexts handout:a 2"]);
  expect(found("es", { a: "one", a_none: "none" }, { a: "uno" })).toEqual(["translation-contexts handout:a 2"]);
  expect(found("es", { a: "one", a_none: "none" }, { a: "uno", a_none: "nada", a_left: "x" })).not.toEqual([]);
});

it("values are shown as the source shows them; the animal's name is free", () => {
  expect(sentence("Ring {{who}}.", "Llame.")).toEqual(["translation-values"]);
  expect(sentence("Ring {{who}}.", "Llame a {{whom}}.")).toEqual(["translation-values"]);
  expect(sentence("Ring {{who}}.", "Llame a {{who}} por {{name}}.")).toEqual([]);
});

it("numbers, times, phones and units stand in the translation, in any digits and any separator, and no others do", () => {
  expect(sentence("Wait 2 hours. Ring 555-0142 at 8:30.", "Espere 2 horas. Llame al 555-0142 a las 8.30.")).toEqual([]);
  expect(sentence("Wait 2 hours.", "Espere 3 horas.")).toEqual(["translation-figures"]);
  expect(sentence("Wait 10 days.", "انتظر ١٠ أيام.", "ar")).toEqual([]);
  expect(sentence("Wait 10 days.", "等１０天。", "zh-Hans")).toEqual([]);
  expect(sentence("Wait 10 days.", "等十天。", "zh-Hans")).toEqual(["translation-figures"]);
  expect(sentence("Wait a day.", "Espere 24 horas.")).toEqual(["translation-figures"]);
  expect(sentence("Give {{dose}} mg for each kg.", "Dé {{dose}} mL por cada kg.")).toEqual(["translation-figures"]);
  expect(sentence("Give 5 IU now.", "Dé 5 UI ya.", "es", { units: { IU: ["UI"] } })).toEqual([]);
  expect(sentence("Give 5 IU now.", "Dé 5 UI ya.")).toEqual(["translation-figures"]);
});

it("bold stays bold, and nothing becomes markup", () => {
  expect(sentence("**Go now.** Ring.", "**Vaya ya.** Llame.")).toEqual([]);
  expect(sentence("**Go now.** Ring.", "Vaya ya. Llame.")).toEqual(["translation-markup"]);
  expect(sentence("Ring us.", "Llame_nos_.")).toEqual(["translation-markup"]);
  expect(sentence("Ring us.", "- Llame.")).toEqual(["translation-markup"]);
  expect(sentence("Ring {{who}}.", "Llame a {{who}} {{who}.")).toContain("translation-markup");
});

it("no English is left over", () => {
  expect(sentence("Take off the collar.", "Quite the collar.")).toEqual(["translation-untranslated"]);
  expect(sentence("Medicines to take", "Medicines to take")).toEqual(["translation-untranslated"]);
  expect(sentence("Take off the collar.", "取下 collar。", "zh-Hans")).toEqual(["translation-untranslated"]);
  expect(sentence("An X-ray picture.", "صورة X-ray.", "ar")).toEqual(["translation-untranslated"]);
  expect(sentence("An X-ray picture.", "صورة X-ray.", "ar", { words: ["x-ray"] })).toEqual([]);
  expect(sentence("{{low}} to {{high}}", "من {{low}} إلى {{high}}", "ar")).toEqual([]);
  // No English "at" in "até", no "for" in "força".
  expect(sentence("Keep it on until the day.", "Deixe até o dia, com força.", "pt-BR")).toEqual([]);
  expect(sentence("Keep it on until the day.", "Deixe at o dia.", "pt-BR")).toEqual(["translation-untranslated"]);
});

it("a problem quotes what is typed in a plan", () => {
  const hint = (english: string, own: string) => found("es", { a: english }, { a: own }, {}, "problems/plan.json");
  expect(hint("Write last given: 08:00, once.", "Escriba last given: 08:00, una vez.")).toEqual([]);
  expect(hint("Write the last time it was given.", "Write the last time que se dio.")).not.toEqual([]);
});

it("a sentence over twice as long needs a reason; a label does not", () => {
  const long = "Por favor, llame a la clínica en cuanto pueda hacerlo.";
  expect(sentence("Please ring us soon.", long)).toEqual(["translation-long"]);
  expect(sentence("Please ring us soon.", long, "es", { longer: { "handout:a": "the verb needs it" } })).toEqual([]);
  expect(sentence("upper leg", "la parte de arriba de la pata")).toEqual([]);
});

it("a variant says only what it says otherwise", () => {
  const { value } = openLocales({
    "locales/en/handout.json": JSON.stringify({ a: "Color of {{what}}", b: "Ring" }),
    "locales/en-GB/handout.json": JSON.stringify({ a: "Colour of {{what}}" }),
  });
  expect(value && guardTranslation(value, "en-GB")).toEqual([]);
});

it.each(locales.tags)("%s says how it is written, and what it calls a bandage and a collar", async (tag) => {
  const style = await readFile(`locales/${tag}/STYLE.md`, "utf8");
  const base = tag === "en-GB" ? ["ring us"] : ["cone collar", "bandage", "gauze", "sedation", "go now"];
  for (const term of base) expect(style.toLowerCase()).toContain(term);
});
