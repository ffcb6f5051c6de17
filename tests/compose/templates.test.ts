import { describe, expect, it } from "vitest";
import { openTemplates } from "#compose/templates.js";
import { guardTranslation } from "#locale/guards/guards.js";
import { openLocales } from "#locale/locales.js";
import { placeText } from "#problems/place.js";
import { locales } from "./shipped.js";

const file = "templates/handout/handout.hbs";
const open = (text: string, more: Record<string, string> = {}) => openTemplates({ [file]: text, ...more }, locales);
/** Every problem as "code line:column". */
const problemsOf = (text: string, more?: Record<string, string>) =>
  open(text, more).problems.map(({ code, at }) => `${code} ${placeText(at).replace(/^.*?:/, "")}`);

describe("a misspelt name is found wherever it stands, with its line and column", () => {
  it.each([
    ["alone", "{{patient.nmae}}", ["template-path-unknown 1:11"]],
    ["in if", "a\n{{#if patent.name}}x{{/if}}", ["template-path-unknown 2:7"]],
    ["in unless", "{{#unless colar}}x{{/unless}}", ["template-path-unknown 1:11"]],
    ["in each", "{{#each medicine}}x{{/each}}", ["template-path-unknown 1:9"]],
    ["inside each", "{{#each medicines}}\n  {{nam}}\n{{/each}}", ["template-path-unknown 2:5"]],
    ["in with", "{{#with estimat}}x{{/with}}", ["template-path-unknown 1:9"]],
    ["inside with", "{{#with estimate}}{{total.lo}}{{/with}}", ["template-path-unknown 1:27"]],
    ["in else", "{{#if collar}}x{{else}}{{colar}}{{/if}}", ["template-path-unknown 1:26"]],
    ["in else if", "{{#if collar}}x{{else if colar}}y{{/if}}", ["template-path-unknown 1:26"]],
    ["after ../", "{{#each medicines}}{{../patient.nam}}{{/each}}", ["template-path-unknown 1:33"]],
    ["beyond the page", "{{../patient}}", ["template-path-unknown 1:3"]],
    ["after @root", "{{#each medicines}}{{@root.patint}}{{/each}}", ["template-path-unknown 1:28"]],
    ["after @", "{{#each medicines}}{{@indx}}{{/each}}", ["template-path-unknown 1:22"]],
    ["after as", "{{#each medicines as |m|}}{{m.nam}}{{/each}}", ["template-path-unknown 1:31"]],
    ["in a value of say", '{{say "handout:next.visit" when=(when next.vist.at)}}', ["template-path-unknown 1:44"]],
    ["before its own like", "{{clinic.na.name}}", ["template-path-unknown 1:10"]],
    ["in a partial", "{{#each medicines}}{{> handout/one}}{{/each}}", ["template-path-unknown 1:3"]],
    ["in a partial nobody calls", "", ["template-path-unknown 1:3"]],
  ])("%s", (_where, text, expected) => {
    const more = text.includes("> handout/one") || text === "" ? { "templates/handout/one.hbs": "{{nam}}" } : {};
    expect(problemsOf(text, more as Record<string, string>)).toEqual(expected);
  });

  it("and the right ones pass", () => {
    const text = `{{#each medicines as |m i|}}{{m.name}} {{i}} {{@index}} {{#unless @last}},{{/unless}}{{#with strength}}{{value}}
      {{../name}} {{../../patient.name}} {{@root.owner.name}}{{/with}}{{#each doses}}{{dose this}}{{/each}}{{/each}}`;
    expect(problemsOf(text)).toEqual([]);
  });
});

describe("helpers, partials, choices, lists, blocks and syntax", () => {
  it.each([
    ["a helper", "{{wen discharged}}", ["template-helper-unknown 1:3"]],
    ["a helper inside", '{{say "handout:about.made" day=(dat discharged)}}', ["template-helper-unknown 1:33"]],
    ["a block", "{{#eech medicines}}x{{/eech}}", ["template-helper-unknown 1:4"]],
    ["lookup", "{{#with (lookup patient 'name')}}x{{/with}}", ["template-helper-unknown 1:10"]],
    ["a partial", "{{> handout/rng}}", ["template-partial-unknown 1:1"]],
    [
      "a word a fact can never be",
      '{{#each contacts}}{{#if (is when "opn")}}x{{/if}}{{/each}}',
      ["template-choice-unknown 1:35"],
    ],
    ["looping over one thing", "{{#each patient.name}}x{{/each}}", ["template-not-a-list 1:9"]],
    ["a block of the page", "## A\n\n:::leed\nx\n:::", ["template-markup-unknown 3:1"]],
    ["an open block", "a\n{{#if collar}}\nb", ["template-syntax 3:1"]],
    ["a decorator", "{{* x}}", ["template-construct 1:1"]],
  ])("%s", (_what, text, expected) => {
    const found = problemsOf(text);
    expect(found.length).toBeGreaterThan(0);
    expect(found).toEqual(expected);
  });

  it("every problem is told, not the first", () => {
    expect(problemsOf("{{a}}\n{{b}}\n{{wen c}}", { "templates/handout/bad.hbs": "{{#if" })).toHaveLength(5);
  });

  it("the nearest names are given", () => {
    const [found] = open("{{patient.wieght}}").problems;
    expect(found?.values).toMatchObject({ near: ["weight"] });
  });
});

describe("words", () => {
  const two = openLocales({
    "locales/en/handout.json": JSON.stringify({ a: "A {{x}}", b: "B", c_female: "C", d: { booked: "D" } }),
    "locales/en-GB/handout.json": JSON.stringify({ a: "A {{y}}", c_female: "C", c_male: "C" }),
    "locales/es/handout.json": JSON.stringify({ a: "A {{x}}" }),
  }).value;
  const words = (text: string) =>
    openTemplates({ [file]: text }, two ?? locales).problems.map(({ code, values }) => [code, values]);

  it("a key the source lacks", () => {
    const near = expect.anything();
    expect(words('{{say "handout:e"}}')).toEqual([
      ["template-words-unknown", { key: "handout:e", language: "en", near }],
      ["template-words-unknown", { key: "handout:e", language: "en-GB", near }],
    ]);
  });
  it("a gap in a translation is told of the translation, and stops no other language", () => {
    expect(words('{{say "handout:b"}}')).toEqual([]);
    expect(two && guardTranslation(two, "es").map(({ code, values }) => [code, values])).toContainEqual([
      "translation-missing",
      { key: "handout:b" },
    ]);
  });
  it("a variant need not say what its base says, but is held to what it says", () => {
    const variant = (british: object) =>
      openLocales({
        "locales/en/handout.json": JSON.stringify({ a: "A", b: "B {{x}}" }),
        "locales/en-GB/handout.json": JSON.stringify(british),
      }).value ?? locales;
    const found = (british: object) =>
      openTemplates({ [file]: '{{say "handout:a"}}{{say "handout:b" x=patient.name}}' }, variant(british)).problems;
    expect(found({ a: "Å" })).toEqual([]);
    expect(found({ b: "B {{y}}" })).toMatchObject([{ code: "template-value-missing", values: { language: "en-GB" } }]);
  });
  it("a value a message shows and the template does not give", () => {
    expect(words('{{say "handout:a" x=patient.name}}')).toEqual([
      ["template-value-missing", { key: "handout:a", value: "y", language: "en-GB" }],
    ]);
  });
  it("a form for every word the context can be", () => {
    expect(words('{{say "handout:c" context=patient.sex}}')).toMatchObject([
      ["template-words-unknown", { key: "handout:c_male", language: "en" }],
    ]);
  });
  it("a key made of a fact is checked for every word the fact can be", () => {
    const keys = words('{{#each course.visits}}{{words "handout" "d" certainty}}{{/each}}').map(([, values]) => values);
    expect(keys).toMatchObject([
      { key: "handout:d.expected", language: "en" },
      { key: "handout:d.expected", language: "en-GB" },
      { key: "handout:d.possible", language: "en" },
      { key: "handout:d.possible", language: "en-GB" },
    ]);
  });
});
