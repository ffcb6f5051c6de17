import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Handout } from "#handout/handout.js";
import { matchLanguage } from "#locale/match.js";
import { placeText } from "#problems/place.js";
import { passiveIn } from "#reading/passive.js";
import { readPage, type Written } from "#reading/reading.js";
import { cat, dog } from "../compose/fixture.js";
import { composed, locales } from "../compose/shipped.js";
import { glossary, ruleOf, rules } from "./help.js";

const made = (facts: typeof dog, language: string): Handout => composed(facts, language).value ?? expect.fail();
const plan = { file: "plan.yaml", line: 1, column: 1, length: 1 };
const read = (handout: Handout, written: Written[] = []) => readPage(handout, written, plan, { rules, glossary });

const dogPage = made(dog, "en");

/** What the fixture's clinician wrote by hand, in the language of the page. */
const byHand = ({ reason, estimate }: typeof dog, language: string): Written[] =>
  [reason, ...(estimate?.excluded ?? []), ...(estimate?.terms ? [estimate.terms] : [])].flatMap((told) => {
    const text = told[language];
    return text ? [{ field: "reason", text, language, at: plan }] : [];
  });

/** A page that holds these lines and nothing else. */
const page = (...texts: string[]): Handout => ({
  ...dogPage,
  sections: [
    {
      kind: "section",
      id: "one",
      level: 2,
      weight: "plain",
      title: [{ kind: "text", text: "What to do" }],
      blocks: texts.map((text) => ({ kind: "paragraph", role: "body", inlines: [{ kind: "text", text }] })),
    },
  ],
});
const told = (...texts: string[]) => read(page(...texts)).problems.map(({ code, values }) => [code, values]);

describe.each([
  ["dog", dog],
  ["cat", cat],
] as const)("the whole %s handout", (_, facts) => {
  it.each(rules.filter(({ language }) => matchLanguage(language, locales.tags)))(
    "is as easy as we aim for in $language, and has no hard sentence of ours",
    (rule) => {
      const { scores, problems, words } = read(made(facts, rule.language), byHand(facts, rule.language));
      expect(words).toBeGreaterThan(300);
      for (const { measure, score, aim } of scores) {
        const easier = rule.measures.find(({ id }) => id === measure)?.easier;
        expect([measure, easier === "lower" ? Number(score) <= Number(aim) : Number(score) >= Number(aim)]).toEqual([
          measure,
          true,
        ]);
      }
      // Where the passive is not described yet, the words were not written to the measure of single sentences either.
      if (!rule.passive) return;
      // The hard words are the clinician's own, who has not yet been offered plain ones.
      expect(problems.filter(({ code }) => code !== "word-hard")).toEqual([]);
    },
  );
});

describe("what is hard is told", () => {
  it("a long sentence, with its title", () =>
    expect(told(`${"We go on and ".repeat(7)}stop.`)).toContainEqual([
      "sentence-long",
      expect.objectContaining({ section: "What to do", words: 29, most: 20 }),
    ]));
  it("a sentence of hard words", () =>
    expect(
      told("Administer the prescribed medication immediately following every veterinary consultation."),
    ).toContainEqual(["sentence-hard", expect.objectContaining({ measure: "flesch-kincaid", limit: "6" })]));
  it("a passive", () =>
    expect(told("The wound was cleaned.")).toContainEqual([
      "sentence-passive",
      expect.objectContaining({ passive: "was cleaned" }),
    ]));
  it("a word that nothing explains, and not one that is explained", () => {
    expect(told("See the seroma.")).toContainEqual([
      "word-hard",
      { given: "seroma", section: "What to do", plain: "pocket of fluid" },
    ]);
    expect(told("See the seroma.", "A seroma is a pocket of fluid.")).toEqual([]);
  });
  it("a whole page over the limit", () => {
    const long = "Veterinary practitioners recommend immediate hospitalization.";
    expect(told(long)).toContainEqual(["page-hard", expect.objectContaining({ language: "en", limit: "6" })]);
  });
  it("a language without a formula, once", () =>
    expect(read({ ...page("Xin chào."), language: "vi" }).problems.map(({ code }) => code)).toEqual([
      "reading-unknown",
    ]));
});

it("labels, names and opening hours are no sentences; points of a time end none", () => {
  expect(read(page("Juniper Row Animal Clinic", "We are here.")).sentences).toBe(1);
  const at = { kind: "when", iso: "2026-03-07T09:30", text: "9:30 a. m. Saturday", from: "plan.yaml:1:1" } as const;
  const handout = page("Come.");
  const [block] = handout.sections[0]?.blocks ?? [];
  if (block?.kind !== "paragraph") throw new Error("no paragraph");
  block.inlines = [{ kind: "text", text: "Come at " }, at, { kind: "text", text: "." }];
  expect(read(handout)).toMatchObject({ sentences: 1 });
});

describe("the clinician's own words", () => {
  const text = "We looked at it. It is a seroma.";
  const at = { file: "plan.yaml", line: 10, column: 9, length: text.length };
  const written: Written = { field: "reason", text, language: "en", at };

  it("are offered the plain word, at the word", () => {
    const [found, ...others] = read(page("Rest."), [written]).problems;
    expect(others).toEqual([]);
    expect(found).toMatchObject({
      code: "word-hard",
      values: { given: "seroma", section: "reason", plain: "pocket of fluid" },
      at: { line: 10, column: 9 + text.indexOf("seroma"), length: "seroma".length },
    });
  });
  it("are told once, though they stand on the page too", () =>
    expect(read(page("Rest.", text), [written]).problems).toHaveLength(1));
  it("are measured in their own language", () => {
    const es = { ...written, text: "Es un seroma.", language: "es" };
    expect(read(page("Rest."), [es]).problems).toMatchObject([{ values: { plain: "bolsa de líquido" } }]);
  });
  it("written over several lines are told at their first", () => {
    const folded = { ...written, at: { ...at, length: 3 } };
    expect(read(page("Rest."), [folded]).problems.map(({ at }) => placeText(at))).toEqual(["plan.yaml:10:9"]);
  });
});

it.each([
  ["en", "We changed it.", null],
  ["en", "It is not yet changed.", null],
  ["en", "It is never changed at home.", "is never changed"],
  ["en", "The leg was put in a splint.", "was put"],
  ["en", "She is tired.", null],
  ["es", "La herida fue lavada.", "fue lavada"],
  ["es", "La herida está lavada.", null],
  ["es", "Se lava la herida.", null],
])("%s: the passive of “%s” is %s", (language, sentence, passive) =>
  expect(passiveIn(sentence, language, ruleOf(language).passive ?? expect.fail())).toBe(passive),
);

it("reading is of the words alone: the order of the lines changes no score", () => {
  const line = fc.constantFrom("Wash your hands.", "Look at the bandage each morning.", "Ring us if it smells bad.");
  fc.assert(
    fc.property(fc.array(line, { minLength: 1, maxLength: 9 }), (lines) => {
      expect(read(page(...lines.toReversed())).scores).toEqual(read(page(...lines)).scores);
    }),
  );
});
