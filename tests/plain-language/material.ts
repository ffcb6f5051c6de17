import { blocksIn, sectionsIn, wordsOf } from "#handout/walk.js";
import { compose, compute, type Facts, type Handout, type Plan, type Reading, reading } from "#index.js";
import { cases, house, planOf, whole } from "../examples/examples.js";
import { planWith } from "../signs/help.js";

/** One handout in English, and what was measured of it. */
export type Material = { name: string; handout: Handout; facts: Facts; reading: Reading };

const collar = (length: string, until: string) => `collar: { neck: 41 cm, length: ${length}, until: ${until} }`;

/** A spread of the topics: of wounds, of what is inside, of both species, with a collar and without. */
const spread: [name: string, care: string[], patient: string, rest?: string][] = [
  ["a blocked bladder", ["topic: urinary-blockage, course: [recheck day 5-7]"], "species: cat, sex: neutered male"],
  [
    "a spay",
    ["topic: spay-dog, course: [suture removal day 10-14]"],
    "species: dog, sex: female",
    collar("20 cm", "sutures out"),
  ],
  [
    "a sore eye",
    ["topic: eye-ulcer-or-surgery, site: right eye, course: [recheck day 1-3]"],
    "species: dog, sex: male, breed: pug",
  ],
  [
    "a splint",
    ["topic: splint-or-cast, site: right lower front leg, course: [splint change every 7 days until day 28]"],
    "species: dog, sex: female",
    collar("20 cm", "bandage off"),
  ],
  [
    "a feeding tube",
    ["topic: feeding-tube, site: neck, course: [recheck day 5-7]", "topic: anaesthesia-recovery"],
    "species: cat, sex: female, born: 2012-01",
  ],
  [
    "a hot spot and an ear",
    ["topic: hot-spot, site: left cheek, course: [recheck day 5-7]", "topic: ear-infection, site: left ear"],
    "species: dog, sex: male",
    collar("20 cm", "2026-03-12"),
  ],
  [
    "a burn",
    ["topic: burn, site: back, bandage: body wrap, course: [change every day for 3-5 days]"],
    "species: dog, sex: female",
  ],
  ["fits", ["topic: seizure, course: [recheck day 14]"], "species: dog, sex: male"],
  ["a cough", ["topic: respiratory-infection, course: [recheck day 7-10]"], "species: cat, sex: female"],
  ["teeth out", ["topic: dental-extraction, course: [recheck day 10-14]"], "species: cat, sex: female"],
  [
    "much at once",
    [
      "topic: surgical-drain, site: left flank, course: [drain removal day 3-5]",
      "topic: cystotomy, course: [suture removal day 10-14]",
      "topic: bite-wound, site: left cheek",
    ],
    "species: dog, sex: female, conditions: [nursing]",
    collar("20 cm", "sutures out"),
  ],
];

export const materials: Material[] = [
  ...cases.map((name) => of(name, planOf(name))),
  ...spread.map(([name, care, patient, rest = ""]) =>
    of(name, planWith(care, patient, rest, "We looked at Bramble today.")),
  ),
];

function of(name: string, plan: Plan): Material {
  const facts = whole(compute(plan, house));
  const handout = whole(compose(facts, house, { language: "en" }));
  return { name, handout, facts, reading: reading(plan, handout, house) };
}

export const sections = ({ handout }: Material) => [...sectionsIn(handout)];
export const blocks = ({ handout }: Material) => [...blocksIn(handout)];
export const lists = (material: Material) =>
  blocks(material).flatMap((block) => (block.kind === "list" ? [block] : []));
export const tables = (material: Material) =>
  blocks(material).flatMap((block) => (block.kind === "table" ? [block] : []));
export const figures = (material: Material) =>
  blocks(material).flatMap((block) => (block.kind === "figure" ? [block] : []));
export const section = (material: Material, id: string) => sections(material).find((one) => one.id === id);

/** Everything an owner reads in sentences: paragraphs and lists. */
export const lines = (material: Material): string[] =>
  blocks(material).flatMap((block) => {
    if (block.kind === "paragraph") return [wordsOf(block.inlines)];
    return block.kind === "list" ? block.items.map(({ inlines }) => wordsOf(inlines)) : [];
  });

/** The steps and what not to do, as they stand on the page. */
export const asked = (material: Material): string[] =>
  ["home", "avoid"].flatMap((id) => {
    const found = section(material, id);
    return found ? lines({ ...material, handout: { ...material.handout, sections: [found] } }) : [];
  });
