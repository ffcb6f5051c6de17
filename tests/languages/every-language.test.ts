import { getDocument } from "pdfjs-dist/legacy/build/pdf.mjs";
import { describe, expect, it } from "vitest";
import { faultsOf } from "#handout/check.js";
import type { Handout, Inline } from "#handout/handout.js";
import { blocksIn, linesOf, sectionsIn } from "#handout/walk.js";
import { compose, guardLanguage, proof, render } from "#index.js";
import { cases, factsOf, house, whole } from "../examples/examples.js";
import { randomFacts } from "./random-plans.js";

/** HEARTHSHEET_PLANS=200 tries all of them. */
const plans = randomFacts(Number(process.env["HEARTHSHEET_PLANS"] ?? 6), house);
const examples = cases.map((name) => factsOf(name));
const { tags } = house.locales;
const guardOf = (tag: string): { words?: string[]; english?: string[] } =>
  JSON.parse(house.locales.texts[`locales/${tag}/guard.json`] ?? "{}");
const english = new Set(guardOf("en").english);

/** The words of a line that are the page's own: not those of another language, nor values, which stay as the plan has them. */
const own = (inlines: readonly Inline[]): string =>
  inlines
    .map((one) => {
      if (one.kind === "text") return one.text.replace(/\u2068[^\u2068\u2069]*\u2069/g, " ");
      return one.kind === "statement" ? own(one.inlines) : "";
    })
    .join("");

const linesOn = (handout: Handout): string[] => [
  ...[...sectionsIn(handout)].map(({ title }) => own(title)),
  ...[...blocksIn(handout)].flatMap(linesOf).map(own),
];

/** English that is left on a page: in a script of its own any word of it, else a word of the list. */
function leftOver(handout: Handout, tag: string): string[] {
  const allowed = new Set(guardOf(tag).words?.map((word) => word.toLowerCase()));
  const { script } = new Intl.Locale(tag).maximize();
  return linesOn(handout)
    .flatMap((line) => line.match(/[\p{L}\p{M}'’-]+/gu) ?? [])
    .map((word) => word.toLowerCase())
    .filter((word) => !allowed.has(word) && (script === "Latn" ? english.has(word) : /^[a-z'’-]{4,}$/.test(word)));
}

describe.each(tags.map((tag) => [tag]))("%s", (tag) => {
  it("is whole as a translation", () => expect(guardLanguage(house, tag)).toEqual([]));

  it(`words ${plans.length} random plans and the examples: nothing missing, nothing of another language`, () => {
    for (const facts of [...examples, ...plans]) {
      const { value, problems } = compose(facts, house, { language: tag });
      expect(problems.filter(({ severity }) => severity === "stop")).toEqual([]);
      const handout = value ?? expect.fail();
      expect(faultsOf(handout)).toEqual([]);
      expect(JSON.stringify(handout)).not.toMatch(/⟦|\{\{|\}\}|undefined|NaN|\ue000/);
      if (!tag.startsWith("en")) expect(leftOver(handout, tag).filter((word) => word !== "qxz")).toEqual([]);
    }
  });

  it("builds every format of them, and no character is without a shape", async () => {
    for (const facts of [...examples, ...plans]) {
      const handout = whole(compose(facts, house, { language: tag }));
      const { problems } = await render(handout, house, {
        paper: "letter",
        large: false,
        formats: ["pdf", "html", "text", "ics", "sms"],
      });
      expect(problems).toEqual([]);
    }
  });

  it("has a proof beside another language", () => {
    for (const facts of examples) {
      const staff = { ...facts, clinic: { ...facts.clinic, staffLanguage: tag.startsWith("en") ? "es" : "en" } };
      expect(faultsOf(whole(proof(staff, house, { language: tag })))).toEqual([]);
    }
  });
});

// Letters in their order, as a reader, a search or a screen reader finds them.
const scripts = tags.filter((tag) => ["ar", "zh-Hans", "vi"].includes(tag));
it.each(scripts.map((tag) => [tag]))(
  "95 of 100 words of the %s examples come back from the PDF in their order",
  async (tag) => {
    for (const facts of examples) {
      const handout = whole(compose(facts, house, { language: tag }));
      const [file] = whole(await render(handout, house, { paper: "letter", large: false, formats: ["pdf"] }));
      const document = await getDocument({ data: (file?.bytes ?? new Uint8Array()).slice(), verbosity: 0 }).promise;
      let found = "";
      for (let number = 1; number <= document.numPages; number++) {
        const { items } = await (await document.getPage(number)).getTextContent();
        found += items.map((item) => ("str" in item ? item.str : "")).join("");
      }
      const squeezed = (text: string) => text.normalize("NFC").replace(/[\s\u200e\u200f\u2066-\u2069]/g, "");
      const text = squeezed(found);
      const words = [...blocksIn(handout)]
        .flatMap((block) => (block.kind === "paragraph" || block.kind === "list" ? linesOf(block) : []))
        .flatMap((line) => own(line).split(/\s+/).map(squeezed))
        .filter((word) => word.length > 1);
      const back = words.filter((word) => text.includes(word)).length;
      expect(words.length).toBeGreaterThan(50);
      expect(back / words.length).toBeGreaterThanOrEqual(0.95);
    }
  },
);
