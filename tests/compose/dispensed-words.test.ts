import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { printTree } from "#handout/print-tree.js";
import { compose, compute, openHouse, readPlan } from "#index.js";
import { shippedFiles } from "#io/shipped.js";

const source = (file: string, text: string) => ({ file, bytes: new TextEncoder().encode(text) });
const cat = readFileSync("examples/cat-abscess-at-home/plan.yaml", "utf8");
const clinic = source("clinic.yaml", readFileSync("examples/clinic.yaml", "utf8"));
const prices = source("prices.yaml", readFileSync("examples/prices.yaml", "utf8"));

// What nobody counts by the piece goes home in a container, which needs words too.
it.each([
  ["drops: 0.3 %", "ear", "give: 2 drops", { en: "1 bottle", es: "1 frasco" }],
  ["ointment: 1 %", "skin", "give: 1 application", { en: "1 tube", es: "1 tubo" }],
])("%s goes home and is told in words", async (form, route, give, words) => {
  const text = cat
    .replace("liquid: 62.5 mg/mL", form)
    .replace("    syringe: 0.1 mL\n", `    route: ${route}\n`)
    .replace("give: 1 mL", give);
  const house = openHouse(await shippedFiles()).value;
  const plan = readPlan({ plan: source("plan.yaml", text), clinic, prices }, { today: "2026-03-05" });
  const facts = house && plan.value && compute(plan.value, house);
  expect([...plan.problems, ...(facts?.problems ?? [])].filter(({ severity }) => severity === "stop")).toEqual([]);
  for (const language of ["en", "es"] as const) {
    const handout = house && facts?.value && compose(facts.value, house, { language });
    expect(handout?.problems.map(({ code }) => code)).toEqual([]);
    expect(handout?.value && printTree(handout.value)).toContain(words[language]);
  }
});
