import { describe, expect, it } from "vitest";
import { compose } from "#compose/compose.js";
import { composeProof } from "#compose/proof/proof.js";
import type { Facts } from "#compute/facts.js";
import { faultsOf } from "#handout/check.js";
import type { Handout, Table } from "#handout/handout.js";
import { blocksIn, inlinesIn, wordsOf } from "#handout/walk.js";
import { withClinicReview } from "#locale/status/clinic-review.js";
import { cat, dog } from "./fixture.js";
import { locales, templates } from "./shipped.js";

const made = (facts: Facts, language: string, reviews = withClinicReview(locales, [], noReview)) =>
  composeProof(facts, { language, templates, locales, reviews });
const noReview = { language: "tlh", by: "", on: "" };
const tables = (handout: Handout) => [...blocksIn(handout)].filter((block): block is Table => block.kind === "table");
const rows = (handout: Handout) =>
  tables(handout).flatMap((table) => table.rows.map((cells) => cells.map(({ inlines }) => wordsOf(inlines))));

describe.each([
  ["dog", dog],
  ["cat", cat],
] as const)("the proof of the %s in Spanish for staff who read English", (_, facts) => {
  const proof = made(facts, "es").value ?? expect.fail();
  const [owner, staff] = ["es", "en"].map(
    (language) => compose(facts, { language, templates, locales }).value ?? expect.fail(),
  ) as [Handout, Handout];

  it("has the owner's words on one side and the staff's on the other, of one sentence each", () => {
    const pairs = rows(proof);
    const side = (handout: Handout) =>
      new Map(
        [...inlinesIn(handout)].flatMap((one) => (one.kind === "statement" ? [[one.id, wordsOf(one.inlines)]] : [])),
      );
    const [es, en] = [side(owner), side(staff)];
    expect(es.size).toBeGreaterThan(15);
    for (const [id, words] of es) {
      const row = pairs.find(([left]) => left?.includes(words));
      expect(row?.[1], id).toContain(en.get(id));
    }
  });

  it("is a sound page in the staff's language, whose owner's side says its own", () => {
    expect(faultsOf(proof)).toEqual([]);
    expect([proof.language, proof.events, proof.live]).toEqual(["en", [], undefined]);
    for (const { rows } of tables(proof))
      for (const [left, right] of rows)
        expect([left?.spoken, right?.spoken]).toEqual([{ language: "es", direction: "ltr" }, undefined]);
    expect(wordsOf([...inlinesIn(proof)])).toContain("Do not give it to the owner");
  });

  it("leaves out no line of the owner's page that is made of words", () => {
    const shown = rows(proof).map(([left]) => left);
    for (const { title } of owner.sections) expect(shown).toContain(wordsOf(title));
    for (const event of owner.events) expect(shown.some((words) => words === event.summary)).toBe(true);
    for (const message of owner.messages ?? []) expect(shown).toContain(message);
  });

  it("carries no mark of how it was made", () => expect(JSON.stringify(proof)).not.toMatch(/[\u2800-\u28ff]/));
});

describe("who has read each line", () => {
  const states = (reviews?: Parameters<typeof made>[2]) =>
    new Set(rows(made(dog, "es", reviews).value ?? expect.fail()).map((cells) => cells.at(-1)));
  it("nobody yet; or your clinic, once it has", () => {
    expect([...states()]).toContain("nobody yet");
    const read = withClinicReview(locales, [], { language: "es", by: "Ana", on: "2026-03-04" });
    expect([...states(read)].sort()).toEqual(["your clinic", "your own words"]);
  });
  it("a note of the clinician's that nobody wrote in the owner's language stands out, and the clinician is told", () => {
    const { value, problems } = made({ ...dog, reason: { en: "A cut." } }, "es");
    const [row] = rows(value ?? expect.fail()).filter(([, right]) => right === "A cut.");
    expect(row).toEqual(["A cut.", "A cut.", "not translated"]);
    expect(problems.map(({ code }) => code)).toContain("reason-not-translated");
  });
});

it("where owner and staff read the same there is none, and a note says so", () =>
  expect(made(dog, "en")).toMatchObject({
    value: null,
    problems: [{ code: "proof-same-language", severity: "note" }],
  }));
