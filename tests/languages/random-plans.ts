import { readdirSync, readFileSync } from "node:fs";
import fc from "fast-check";
import { compute, type Facts, type House, readPlan } from "#index.js";

/** The clinic and the animal of every random plan; nothing of them is a word of any language we have. */
export const names = ["Xylo", "Zuhn Qarb", "Vrimm"];

type Topic = {
  id: string;
  species: ("dog" | "cat")[];
  sex?: string[];
  visits: string[];
  course: string;
  bandage: string;
  site: string;
};
const topics = readdirSync("shared/topics").map(
  (file): Topic => JSON.parse(readFileSync(`shared/topics/${file}`, "utf8")),
);
const sites: { id: string; species?: string[]; sides?: string }[] = JSON.parse(
  readFileSync("shared/sites.json", "utf8"),
);
const siteNames = sites.map(({ id }) => id.replaceAll("-", " "));

const lines = [
  "recheck day 3-5",
  "recheck day 10-12",
  "change every day for 3-5 days, first tomorrow",
  "change every 2-3 days until day 14",
  "maybe closure day 7-14",
  "sutures out day 10-14",
  "drain out day 3-5",
];
const medicines = [
  {
    name: "amoxicillin-clavulanate",
    tablet: "375 mg",
    give: "1 tablet",
    every: "12 h",
    for: "7 days",
    "last given": "08:30",
  },
  {
    name: "carprofen",
    tablet: "25 mg",
    give: "0.5 tablet",
    every: "12 h",
    for: "4 days",
    "last given": "09:00",
    food: "with",
  },
  {
    name: "amoxicillin-clavulanate",
    liquid: "62.5 mg/mL",
    syringe: "0.1 mL",
    give: "1 mL",
    every: "12 h",
    for: "7 days",
    "last given": "10:45",
  },
  { name: "gabapentin", capsule: "100 mg", give: "1 capsule", every: "8 h", for: "5 days", "last given": "08:00" },
  {
    name: "tramadol",
    tablet: "50 mg",
    give: "1 tablet",
    every: "8 h",
    "as needed": "at most 3 a day",
    for: "3 days",
    "last given": "not given",
  },
  { name: "maropitant", tablet: "16 mg", give: "1 tablet", every: "24 h", for: "2 days", "last given": "09:00" },
  {
    name: "prednisolone",
    tablet: "5 mg",
    give: "1 tablet",
    every: "12 h",
    for: "4 days",
    "last given": "08:00",
    next: [{ give: "0.5 tablet", every: "24 h", for: "4 days" }],
    splits: "halves",
  },
];
const told = {
  en: "Qxz.",
  de: "Qxz.",
  es: "Qxz.",
  fr: "Qxz.",
  "pt-BR": "Qxz.",
  "zh-Hans": "Qxz.",
  vi: "Qxz.",
  ar: "Qxz.",
};

const plan = fc
  .record({
    topic: fc.constantFrom(...topics),
    second: fc.option(fc.constantFrom(...topics), { freq: 2 }),
    species: fc.constantFrom("dog", "cat"),
    sex: fc.constantFrom("female", "male", "spayed female", "neutered male"),
    born: fc.constantFrom("2016-04", "2019-05", "2025-03", "2026-01"),
    weight: fc.constantFrom("3.4 kg", "8 kg", "24.6 kg", "61 kg"),
    side: fc.constantFrom("left", "right", ""),
    site: fc.constantFrom(...siteNames),
    course: fc.subarray(lines),
    bandage: fc.option(fc.constantFrom("tie-over", "body wrap", "limb wrap", "head or neck wrap")),
    medicines: fc.subarray(medicines, { maxLength: 4 }),
    collar: fc.option(fc.constantFrom("cone", "soft cone", "ring")),
    paid: fc.constantFrom("0", "150.00"),
    estimate: fc.option(
      fc.subarray(["examination", "bandage change", "sedation if needed", "closure if done", "recheck"], {
        minLength: 1,
      }),
    ),
  })
  .map(
    ({
      topic,
      second,
      species,
      sex,
      born,
      weight,
      side,
      site,
      course,
      bandage,
      medicines,
      collar,
      paid,
      estimate,
    }) => ({
      format: "hearthsheet/1",
      clinic: "../clinic.yaml",
      case: "Q-1",
      discharged: "2026-03-02 16:30",
      patient: { name: names[0], species, sex, born, weight },
      owner: { name: names[1], language: "en", email: "q@example.org" },
      reason: told,
      care: [topic, ...(second ? [second] : [])].map(({ id, bandage: wraps, site: where }) => ({
        topic: id,
        ...(where === "none" ? {} : { site: `${side} ${site}`.trim() }),
        ...(bandage && wraps !== "none" ? { bandage } : {}),
        course,
      })),
      medicines: medicines.map((one) => ({ ...one, why: told })),
      ...(collar ? { collar: { type: collar, neck: "30 cm", length: "15 cm", until: "2026-03-15" } } : {}),
      ...(estimate ? { estimate: { paid, items: estimate } } : {}),
    }),
  );

const clinic = { file: "clinic.yaml", bytes: readFileSync("examples/clinic.yaml") };
const prices = { file: "prices.yaml", bytes: readFileSync("examples/prices.yaml") };

/** What follows from so many random plans that nothing stops; the same for the same count. */
export function randomFacts(count: number, house: House): Facts[] {
  const found: Facts[] = [];
  for (let seed = 1; found.length < count; seed++)
    for (const one of fc.sample(plan, { numRuns: 100, seed })) {
      const bytes = new TextEncoder().encode(JSON.stringify(one));
      const read = readPlan({ plan: { file: "plan.json", bytes }, clinic, prices }, { today: "2026-03-02" });
      const facts = read.value && compute(read.value, house).value;
      if (facts && found.length < count) found.push(facts);
    }
  return found;
}
