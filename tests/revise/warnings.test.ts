import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { expect, it } from "vitest";
import { compute, mergeVisit, readPlan, revise } from "../../src/index.js";
import { house } from "../examples/examples.js";

const home = fileURLToPath(new URL("../../examples/", import.meta.url));
const text = (file: string) => readFileSync(home + file, "utf8");
const source = (file: string, content: string) => ({ file, bytes: new TextEncoder().encode(content) });

/** What revising the dog's plan by an entry asks; more: lines put into the plan. */
function asked(entered: Record<string, unknown>, more = ""): string[] {
  const sources = {
    clinic: source("clinic.yaml", text("clinic.yaml")),
    prices: source("prices.yaml", text("prices.yaml")),
  };
  const plan = readPlan(
    { plan: source("plan.yaml", text("dog-cheek-abscess/plan.yaml") + more), ...sources },
    { today: "2026-03-02" },
  );
  const facts = plan.value && compute(plan.value, house).value;
  const usual = { at: "2026-03-03 09:30", visit: ["change"], decided: "continue", charged: "48.00" };
  const entry = mergeVisit(null, { ...usual, ...entered });
  if (!plan.value || !facts || !entry.value) throw new Error(JSON.stringify([plan.problems, entry.problems]));
  const { problems } = revise(plan.value, facts, entry.value, house);
  return problems.map(({ code, severity }) => `${severity} ${code}`);
}
const before = (...amounts: string[]) =>
  `done:\n${amounts.map((amount, i) => `  - { at: 2026-02-2${i} 09:30, visit: [recheck], seen: { discharge: ${amount} }, decided: continue }\n`).join("")}`;

it("a visit that fits asks nothing", () => {
  expect(asked({ weight: "24.9 kg", left: { carprofen: "3 tablets" }, seen: { discharge: "little" } })).toEqual([]);
});

it("a booked visit that nothing was entered for", () => {
  expect(asked({ at: "2026-03-04 09:30" })).toEqual(["ask revise-booked-skipped"]);
});

it("a medicine that ran out before its last dose; not one whose last dose was given", () => {
  expect(asked({ left: { carprofen: "0 tablets" } })).toEqual(["ask revise-ran-out"]);
  expect(asked({ left: { carprofen: "0.5 tablet" } })).toEqual([]);
});

it.each([
  [["little", "moderate"], "much", true],
  [["none", "little"], "moderate", true],
  [["little", "moderate"], "moderate", false],
  [["moderate", "little"], "much", false],
  [["little"], "moderate", false],
])("discharge that was %j and is %s: warned %s", (was, now, warned) => {
  expect(asked({ seen: { discharge: now } }, before(...was))).toEqual(warned ? ["ask revise-discharge-rises"] : []);
});

// 24.6 kg: a tenth is 2.46 kg.
it.each([
  ["27.0 kg", false],
  ["27.1 kg", true],
  ["22.2 kg", false],
  ["22.1 kg", true],
  ["48.9 lb", false],
  ["48.7 lb", true],
])("a weight of %s: doses to be looked at again %s", (weight, warned) => {
  expect(asked({ weight })).toEqual(warned ? ["ask revise-weight-changed"] : []);
});

it("a visit the estimate knows nothing of needs its price; so does a day on which nothing was", () => {
  expect(asked({ visit: ["recheck"], charged: undefined })).toContain("stop revise-charge-unknown");
  expect(asked({ "charged on": { "2026-02-27": "10.00" } })).toEqual(["stop revise-charge-day-unknown"]);
});
