import { readFileSync } from "node:fs";
import { compose, compute, type Handout, readPlan, render } from "#index.js";
import { house, whole } from "./examples.js";

const source = (file: string, text: string) => ({ file, bytes: new TextEncoder().encode(text) });
const read = (path: string) => readFileSync(`examples/${path}`, "utf8");
const dog = read("dog-cheek-abscess/plan.yaml");

/** The dog's handout with one medicine in place of its own, "name: carprofen, tablet: 100 mg, ...", and no estimate. */
export function handoutWith(medicine: string, language: string): Handout {
  const plan = dog
    .replace(/medicines:[\s\S]*?(?=collar:)/, `medicines:\n  - { ${medicine} }\n`)
    .replace(/estimate:[\s\S]*?(?=allow:)/, "");
  const files = {
    plan: source("plan.yaml", plan),
    clinic: source("clinic.yaml", read("clinic.yaml")),
    prices: source("prices.yaml", read("prices.yaml")),
  };
  const facts = whole(compute(whole(readPlan(files, { today: "2026-03-02" })), house));
  return whole(compose(facts, house, { language }));
}

/** The same as plain text in one line. */
export async function textWith(medicine: string, language: string): Promise<string> {
  const handout = handoutWith(medicine, language);
  const [file] = whole(await render(handout, house, { paper: "letter", large: false, formats: ["text"] }));
  return new TextDecoder().decode(file?.bytes).replace(/\s+/g, " ");
}
