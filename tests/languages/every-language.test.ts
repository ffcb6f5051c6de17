import { getDocument } from "pdfjs-dist/legacy/build/pdf.mjs";
import { describe, expect, it } from "vitest";
import { faultsOf } from "#handout/check.js";
import type { Handout, Inline } from "#handout/handout.js";
import { blocksIn, linesOf, sectionsIn } from "#handout/walk.js";
import { compose, type Facts, guardLanguage, proof, render } from "#index.js";
import { cases, factsOf, house, whole } from "../examples/examples.js";
import { wordsInOrder } from "../pdf/words-in-order.js";
import { randomFacts } from "./random-plans.js";

/** HEARTHSHEET_PLANS=200 tries all of them. */
const plans = randomFacts(Number(process.env["HEARTHSHEET_PLANS"] ?? 6), house);
const examples = cases.map((name) => factsOf(name));
const { tags } = house.locales;
const guardOf = (tag: string): { words?: string[]; english?: string[] } =>
  JSON.parse(house.locales.texts[`locales/${tag}/guard.json`] ?? "{}");
const english = new Set(guardOf("en").english);

/** The words of a line that are the page's own, and not of another language. */
const own = (inlines: readonly Inline[]): string =>
  inlines
    .map((one) => {
      if (one.kind === "text") return one.text;
      return one.kind === "statement" ? own(one.inlines) : "";
    })
    .join("");

const linesOn = (handout: Handout): string[] => [
  ...[...sectionsIn(handout)].map(({ title }) => own(title)),
  ...[...blocksIn(handout)].flatMap(linesOf).map(own),
];

/** Names and addresses as the plan and the profile have them: they stand on every page as they are. */
const namesIn = (value: unknown): string[] =>
  typeof value === "string" ? [value] : typeof value === "object" && value ? Object.values(value).flatMap(namesIn) : [];
const namesOf = ({ patient, owner, clinic, contacts, clinician, medicines, collar }: Facts): string[] =>
  namesIn([
    patient.name,
    owner.name,
    clinic.name,
    clinic.address,
    contacts,
    clinician,
    medicines.map(({ name }) => name),
    collar?.size,
  ])
    .filter((name) => name.length > 2)
    .sort((one, other) => other.length - one.length);

/** English that is left on a page: in a script of its own any word of it, else a word of the list. */
function leftOver(handout: Handout, tag: string, facts: Facts): string[] {
  const allowed = new Set(guardOf(tag).words?.map((word) => word.toLowerCase()));
  const { script } = new Intl.Locale(tag).maximize();
  const names = namesOf(facts);
  return linesOn(handout)
    .map((line) => names.reduce((rest, name) => rest.replaceAll(name, " "), line))
    .flatMap((line) => line.match(/[\p{L}\p{M}'’-]+/gu) ?? [])
    .map((word) => word.toLowerCase())
    .filter((word) => !allowed.has(word) && word !== "qxz")
    .filter((word) => (script === "Latn" ? english.has(word) : /^[a-z'’-]{4,}$/.test(word)));
}

describe.each(tags.map((tag) => [tag]))("%s", (tag) => {
  it("is whole as a translation", () => expect(guardLanguage(house, tag)).toEqual([]));

  it(`words ${plans.length} random plans and the examples: nothing missing, nothing of another language`, () => {
    for (const facts of [...examples, ...plans]) {
      const { value, problems } = compose(facts, house, { language: tag });
      expect(problems.filter(({ severity }) => severity === "stop")).toEqual([]);
      const handout = value ?? expect.fail();
      expect(faultsOf(handout)).toEqual([]);
      expect(JSON.stringify(handout)).not.toMatch(/⟦|\{\{\w|undefined|NaN|\ue000/);
      if (!tag.startsWith("en")) expect(leftOver(handout, tag, facts)).toEqual([]);
    }
  });

  it("builds every format of them, and no character is without a shape", async () => {
    for (const facts of [...examples, ...plans]) {
      const handout = whole(compose(facts, house, { language: tag }));
      const { value, problems } = await render(handout, house, {
        paper: "letter",
        large: false,
        formats: ["pdf", "html", "text", "ics", "sms"],
      });
      expect(problems).toEqual([]);
      if (!examples.includes(facts)) continue;
      const page = value?.find(({ name }) => name === "handout.html")?.bytes ?? expect.fail();
      expect(page.byteLength).toBeLessThan(200_000);
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
        found += items.map((item) => ("str" in item ? item.str + (item.hasEOL ? " " : "") : "")).join(" ");
      }
      expect(inOrder(unitsOf(wordsInOrder(handout).join(" "), tag), unitsOf(found, tag))).toBeGreaterThanOrEqual(0.95);
    }
  },
);

/** Words between spaces; in Chinese, which has none, characters. */
function unitsOf(text: string, tag: string): string[] {
  const bare = text.normalize("NFC").replace(/[\u200e\u200f\u2066-\u2069]/g, "");
  return tag === "zh-Hans" ? [...bare.replace(/\s/g, "")] : bare.split(/\s+/).filter((word) => word !== "");
}

/** The share of words that come back in their order: the longest common subsequence. */
function inOrder(wanted: string[], found: string[]): number {
  let row = new Uint16Array(found.length + 1);
  for (const word of wanted) {
    const next = new Uint16Array(found.length + 1);
    for (let at = 0; at < found.length; at++)
      next[at + 1] = word === found[at] ? (row[at] ?? 0) + 1 : Math.max(row[at + 1] ?? 0, next[at] ?? 0);
    row = next;
  }
  return (row.at(-1) ?? 0) / wanted.length;
}
