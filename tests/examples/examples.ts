import { readFileSync } from "node:fs";
import {
  compose,
  compute,
  type Facts,
  type Handout,
  type Outcome,
  openHouse,
  type Plan,
  readPlan,
  type Source,
} from "#index.js";
import { shippedFiles } from "#io/shipped.js";

/** The two worked cases that ship, each in both languages, built as a user builds them: through the front door. */
export const cases = ["dog-cheek-abscess", "cat-abscess-at-home"] as const;
export const languages = ["en", "es"] as const;

export const house = whole(openHouse(await shippedFiles()));

/** The cases in both languages; where there is time (HEARTHSHEET_LONG=1) in every language. */
const spoken = process.env["HEARTHSHEET_LONG"] ? house.locales.tags : languages;
export const everyExample = cases.flatMap((name) => spoken.map((language) => [name, language] as const));

const source = (file: string): Source => ({ file, bytes: readFileSync(file) });

/** What follows from an example's plan. clinic: the text of another profile than its own. */
export const factsOf = (name: (typeof cases)[number], clinic?: string): Facts =>
  whole(compute(planOf(name, clinic), house));

/** An example's plan. clinic: the text of another profile than its own. */
export function planOf(name: (typeof cases)[number], clinic?: string): Plan {
  const profile = source("examples/clinic.yaml");
  const plan = readPlan(
    {
      plan: source(`examples/${name}/plan.yaml`),
      clinic: clinic === undefined ? profile : { ...profile, bytes: new TextEncoder().encode(clinic) },
      prices: source("examples/prices.yaml"),
    },
    { today: "2026-03-02" },
  );
  return whole(plan);
}

export const handoutOf = (facts: Facts, language: string): Handout => whole(compose(facts, house, { language }));

export function whole<T>({ value, problems }: Outcome<T>): T {
  if (value === null) throw new Error(JSON.stringify(problems, null, 1));
  return value;
}
