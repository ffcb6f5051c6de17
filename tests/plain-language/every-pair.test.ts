import fc from "fast-check";
import { beforeAll, describe, expect, it } from "vitest";
import { blocksIn, flat, linesOf, sectionsIn, wordsOf } from "#handout/walk.js";
import { compose, compute, type Handout } from "#index.js";
import { layout } from "#render/pdf/layout.js";
import type { PlacedPiece } from "#render/pdf/piece.js";
import type { Topic } from "#tables/topic.js";
import { house, whole } from "../examples/examples.js";
import { fonts } from "../pdf/help.js";
import { planWith, tables } from "../signs/help.js";

/** A place where each topic may be; two that are put together are on the same one, where most is said of it. */
const places: Record<string, string> = {
  "ear-haematoma": "left ear",
  "ear-infection": "left ear",
  "eye-ulcer-or-surgery": "left eye",
  "splint-or-cast": "left lower front leg",
  "orthopaedic-surgery": "left thigh",
  amputation: "left thigh",
  "feeding-tube": "neck",
};
const usual = ["left cheek", "left flank", "neck", "perineum", "left hind paw"];

const medicines = `medicines:
  - { name: amoxicillin-clavulanate, liquid: 62.5 mg/mL, syringe: 0.1 mL, give: 1 mL, every: 12 h, for: 7 days, last given: 10:45, food: with, why: To fight the infection. }
  - { name: gabapentin, capsule: 100 mg, give: 1 capsule, every: 12 h, for: 5 days, last given: 08:00, why: For pain. }`;

type Pair = { name: string; lines: string[]; patient: string; rest: string };

function lineOf({ id, site, bandage, usualCourse }: Topic, where: string): string {
  const on = site === "needed" ? [`site: ${places[id] ?? where}`] : [];
  const under = bandage === "needed" ? [`bandage: ${/flank|perineum/.test(where) ? "body wrap" : "tie-over"}`] : [];
  return [`topic: ${id}`, ...on, ...under, `course: ${JSON.stringify(usualCourse)}`].join(", ");
}

/** Every two topics that a dog or a cat of either sex can have together; every third with medicines and a hard patient. */
const pairs: Pair[] = (["dog", "cat"] as const)
  .flatMap((species) => (["female", "male"] as const).map((sex) => ({ species, sex })))
  .flatMap(({ species, sex }) => {
    const fitting = tables.topics.filter((topic) => topic.species.includes(species) && topic.sex.includes(sex));
    return fitting.flatMap((one, i) =>
      fitting.slice(i + 1).map((other, j): Pair => {
        const where = usual[(i + j) % usual.length] ?? "back";
        const lines = [one, other].map((topic) => lineOf(topic, where));
        const more =
          (i + j) % 3 === 0 ? { rest: medicines, extra: ", breed: pug, born: 2012-03" } : { rest: "", extra: "" };
        const patient = `species: ${species}, sex: ${sex}${more.extra}`;
        return { name: `${one.id} + ${other.id}, ${patient}, ${where}`, lines, patient, rest: more.rest };
      }),
    );
  });

/** A few, others with another HEARTHSHEET_SEED; all of them with HEARTHSHEET_PAIRS=all, which takes some minutes. */
const few = 24;
const [start = 0] = fc.sample(fc.nat(pairs.length - 1), 1);
const step = Math.floor(pairs.length / few);
const chosen =
  process.env["HEARTHSHEET_PAIRS"] === "all"
    ? pairs
    : Array.from({ length: few }, (_, i) => pairs[(start + i * step) % pairs.length]).flatMap((pair) => pair ?? []);

const textOf = ({ piece }: PlacedPiece) => piece.marks.map((mark) => (mark.kind === "text" ? mark.text : "")).join("");

/** The pages on which the section stands, by the words of its first and its last line. */
function pagesOf(placed: PlacedPiece[], words: string): number[] {
  const start = words.split(" ").slice(0, 4).join(" ");
  return placed.filter((one) => textOf(one).includes(start)).map(({ page }) => page);
}

const handoutOf = ({ lines, patient, rest }: Pair): Handout =>
  whole(compose(whole(compute(planWith(lines, patient, rest), house)), house, { language: "en" }));

describe.each(chosen.map((pair) => [pair.name, pair] as const))("%s", (_, pair) => {
  let handout: Handout;
  beforeAll(() => {
    handout = handoutOf(pair);
  });

  it("says nothing twice, and no list is longer than a tired reader holds", () => {
    const statements = [...sectionsIn(handout)].flatMap(({ blocks }) =>
      blocks.flatMap((block) => (block.kind === "list" ? block.items : [])),
    );
    const ids = statements.flatMap(({ inlines }) =>
      [...flat(inlines)].flatMap((one) => (one.kind === "statement" ? [one.id] : [])),
    );
    const care = ids.filter((id) => tableOf(id));
    expect(care.filter((id, i) => care.indexOf(id) !== i)).toEqual([]);
    const long = [...blocksIn(handout)].filter((block) => block.kind === "list" && block.items.length > 7);
    expect(long.map((block) => linesOf(block).map(wordsOf))).toEqual([]);
  });

  it.each(["letter", "a4"] as const)(
    "%s: page one holds whom to call, what comes next and the first signs",
    (paper) => {
      const { value, problems } = layout(handout, { paper, large: false, fonts });
      expect(problems).toEqual([]);
      const urgent = handout.sections.filter(({ weight }) => weight === "urgent");
      const first = urgent.flatMap(({ blocks }) =>
        blocks.flatMap((block) => (block.kind === "list" ? block.items.map(({ inlines }) => wordsOf(inlines)) : [])),
      );
      for (const words of first) expect([words, pagesOf(value ?? [], words)[0]]).toEqual([words, 0]);
      expect(first.length).toBeGreaterThan(0);
    },
  );
});

const tableOf = (id: string) => /^(steps|normal|signs|avoid|supplies|ends|collar)\./.test(id);
