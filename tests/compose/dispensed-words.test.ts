import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { printTree } from "#handout/print-tree.js";
import { compose, compute, openHouse, readPlan } from "#index.js";
import { shippedFiles } from "#io/shipped.js";
import { textWith } from "../examples/with-medicine.js";

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

const eyes =
  "name: ofloxacin, drops: 0.3 %, route: both eyes, give: 1 drop, every: 8 h, for: 30 days, last given: 08:00, container: 5 mL, once opened: 28 days";

it.each([
  ["en", "2 bottles (5 mL in each)", "use it for 28 days", "Ofloxacin (each eye): 1 drop"],
  ["es", "2 frascos (5 mL en cada uno)", "durante 28 días", "Ofloxacin (cada ojo): 1 gota"],
  ["de", "2 Flaschen (je 5 mL)", "28 Tage lang verwendbar", "Ofloxacin (jedes Auge): 1 Tropfen"],
  ["fr", "2 flacons (5 mL chacun)", "pendant 28 jours", "Ofloxacin (chaque œil)"],
  ["pt-BR", "2 frascos (5 mL em cada um)", "por 28 dias", "Ofloxacin (cada olho)"],
  ["vi", "2 chai (mỗi cái 5 mL)", "dùng được trong 28 ngày", "Ofloxacin"],
  ["zh-Hans", "2瓶（每个5 mL）", "可以用28天", "Ofloxacin"],
  ["ar", "5 mL في كل واحدة", "28 يومًا", "Ofloxacin (كل عين)"],
])(
  "in %s: how many bottles, what each holds, how long it keeps, and into which eye the next drop goes",
  async (tag, ...words) => {
    const text = (await textWith(eyes, tag)).replace(/[\u2066-\u2069]/g, "");
    for (const said of words) expect(text).toContain(said);
  },
);
