/** What an owner reads of several medicines, through the front door. */
import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { printTree } from "#handout/print-tree.js";
import { compose, compute, readPlan } from "#index.js";
import { house, whole } from "../examples/examples.js";

const bytes = (text: string) => new TextEncoder().encode(text);
const file = (path: string) => ({ file: path, bytes: readFileSync(path) });
const dog = readFileSync("examples/dog-cheek-abscess/plan.yaml", "utf8");

function tree(text: string, language: string): string {
  const sources = {
    plan: { file: "plan.yaml", bytes: bytes(text) },
    clinic: file("examples/clinic.yaml"),
    prices: file("examples/prices.yaml"),
  };
  const plan = whole(readPlan(sources, { today: "2026-03-02" }));
  return printTree(whole(compose(whole(compute(plan, house)), house, { language })));
}

test("the clinician's own words on a missed dose stand once where all medicines have the same", () => {
  const missed = dog.replaceAll(
    "    food: with\n",
    "    food: with\n    missed: { en: Leave it out., es: Sáltela. }\n",
  );
  expect(tree(missed, "en").match(/Leave it out\./g)).toHaveLength(1);
  const one = missed.replace("missed: { en: Leave it out.", "missed: { en: Give it within two hours.");
  expect(tree(one, "en").match(/Leave it out\.|Give it within two hours\./g)).toHaveLength(2);
});

test("one and a half is one of them in French, and more than one in English", () => {
  const half = dog.replace("    dose: 13.75 mg/kg\n", "    give: 1.5 tablets\n");
  expect(tree(half, "fr")).toContain('"1½ comprimé"');
  expect(tree(half, "en")).toContain('"1½ tablets"');
});
