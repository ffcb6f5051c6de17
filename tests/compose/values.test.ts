import fc from "fast-check";
import { expect, it } from "vitest";
import { viewOf } from "#compose/view.js";
import type { Facts } from "#compute/facts.js";
import { faultsOf } from "#handout/check.js";
import type { Block, Handout, Inline, Section } from "#handout/handout.js";
import { flat, inlinesIn } from "#handout/walk.js";
import { cat, dog } from "./fixture.js";
import { composed } from "./shipped.js";

/** What a value must never do: become emphasis, a heading, a list, a table, a directive, a template, a tag or a hole. */
const nasty = [
  "**Rex** {{x}} <b> \r\nBcc: all@example.org",
  "# Heading",
  "- item",
  "1. item",
  "[ ] box",
  "| a | b |",
  ":::lead",
  "::section{#ring}",
  "_under_ `code`",
  "{{{this}}} {{> handout/ring}} {{say 'x'}}",
  "&lt;&amp;",
  "\\*",
  "[a](b)",
  "![i](j)",
  "---",
  "===",
  "> quote",
  "    code",
  "\uE000\uE010\uE001",
  "\uE000",
  "$t(handout:title)",
  "{{name}}",
  "\u202eevil",
  "",
  " ",
  "\n\n",
  "__proto__",
  "constructor",
];
const anything = fc.oneof(
  fc.array(fc.constantFrom(...nasty), { minLength: 1, maxLength: 3 }).map((parts) => parts.join(" ")),
  fc.string({ unit: "binary", minLength: 1, maxLength: 40 }),
);

/** A case with every piece of free text replaced; told: what was put in and must be found on the page. */
function poisoned(facts: Facts, texts: readonly string[]): { facts: Facts; put: string[] } {
  const put: string[] = [];
  const next = () => {
    const text = `${put.length}${texts[put.length % texts.length] ?? ""}`;
    put.push(text);
    return text;
  };
  const told = (given: Record<string, string> | null) => given && { en: next() };
  const contacts = facts.contacts.map((contact) => ({
    ...contact,
    name: next(),
    address: contact.address.map(next),
    note: told(contact.note),
  }));
  const made: Facts = {
    ...facts,
    clinician: next(),
    patient: { ...facts.patient, name: next() },
    owner: { ...facts.owner, name: next() },
    clinic: { ...facts.clinic, name: next(), address: contacts.find(({ when }) => when === "open")?.address ?? [] },
    contacts,
    reason: { en: next() },
    medicines: facts.medicines.map((medicine) => ({ ...medicine, name: next(), purpose: told(medicine.purpose) })),
    collar: facts.collar && { ...facts.collar, size: next() },
    estimate: facts.estimate && {
      ...facts.estimate,
      lines: facts.estimate.lines.map((line) => ({ ...line, name: { en: next() }, houseName: null })),
      taxes: facts.estimate.taxes.map((tax) => ({ ...tax, name: { en: next() } })),
      terms: told(facts.estimate.terms),
      excluded: facts.estimate.excluded.map(() => ({ en: next() })),
    },
  };
  return { facts: made, put };
}

/** The tree with its words left out. */
const bones = (handout: Handout) => handout.sections.map(sectionBones);
const sectionBones = ({ id, level, weight, blocks }: Section): unknown => [
  id,
  level,
  weight,
  blocks.map((block) => (block.kind === "section" ? sectionBones(block) : blockBones(block))),
];
const blockBones = (block: Block): unknown => {
  if (block.kind === "list") return [block.mark, block.items.map(({ note }) => note !== undefined)];
  if (block.kind === "table") return ["table", block.head.length, block.rows.length, block.foot.length];
  if (block.kind === "paragraph") return block.role;
  return block.kind;
};

const textOf = (inlines: Iterable<Inline>): string =>
  [...inlines].map((inline) => ("text" in inline ? inline.text : "")).join("\u0000");

it.each([
  ["dog", dog, "en"],
  ["cat", cat, "es"],
] as const)("every value of the %s's case prints as it was written, and moves nothing", (_name, facts, language) => {
  const plain = composed(poisoned(facts, ["x"]).facts, language).value ?? expect.fail();
  fc.assert(
    fc.property(fc.array(anything, { minLength: 1, maxLength: 12 }), (texts) => {
      const { facts: bad, put } = poisoned(facts, texts);
      const { value } = composed(bad, language);
      const handout = value ?? expect.fail("nothing was composed");
      expect(bones(handout)).toEqual(bones(plain));
      expect(faultsOf(handout)).toEqual([]);
      const signed = handout.sections.flatMap(({ blocks }) =>
        blocks.flatMap((block) => (block.kind === "signature" ? block.lines.flatMap((line) => [...flat(line)]) : [])),
      );
      const page = `${handout.title}\u0000${handout.clinic.name}\u0000${handout.clinic.address.join("\u0000")}\u0000${textOf(inlinesIn(handout))}\u0000${textOf(signed)}`;
      for (const text of put) expect(page).toContain(text);
    }),
    { numRuns: 40 },
  );
});

it("a view adds to the facts and changes none of them", () => {
  expect(viewOf(dog)).toMatchObject(dog);
});
