/** A slip of the point in any number the doses follow from, in either example, is never built without a reason of its own. */
import { readFileSync } from "node:fs";
import { Decimal } from "decimal.js";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { computeDoses } from "#compute/doses/doses.js";
import { readPlan } from "#plan/read-plan.js";
import { settle } from "#problems/settle.js";
import { medicines } from "./help.js";

const clinic = { file: "clinic.yaml", bytes: readFileSync("examples/clinic.yaml") };
const prices = { file: "prices.yaml", bytes: readFileSync("examples/prices.yaml") };
const examples = [
  { name: "dog-cheek-abscess", today: "2026-03-02" },
  { name: "cat-abscess-at-home", today: "2026-03-05" },
].map(({ name, today }) => ({ name, today, text: readFileSync(`examples/${name}/plan.yaml`, "utf8") }));

/** What stands in the way of a build. */
function inTheWay(text: string, today: string): string[] {
  const read = readPlan(
    { plan: { file: "plan.yaml", bytes: new TextEncoder().encode(text) }, clinic, prices },
    { today },
  );
  const computed = read.value ? computeDoses(read.value, medicines) : { problems: [] };
  return settle([...read.problems, ...computed.problems], read.value?.allow ?? []).open.map(({ code }) => code);
}

const fields = /\b(?:weight|neck|tablet|capsule|liquid|syringe|dose|give|every|for): (\d+(?:\.\d+)?)/g;
const slips = examples.flatMap((example) =>
  [...example.text.matchAll(fields)].flatMap((found) =>
    [10, 0.1, 100, 0.01].map((factor) => ({
      ...example,
      found: found[0],
      number: found[1] ?? "",
      at: found.index,
      factor,
    })),
  ),
);

test.each(examples)("$name stands as it is", ({ text, today }) => expect(inTheWay(text, today)).toEqual([]));

test.each(slips)("$name: $found, times $factor", ({ text, today, found, number, at, factor }) => {
  const start = at + found.length - number.length;
  const slipped = new Decimal(number).times(factor).toFixed();
  expect(inTheWay(text.slice(0, start) + slipped + text.slice(start + number.length), today)).not.toEqual([]);
});

test("there is a number of every kind to slip", () => {
  const kinds = new Set(slips.map(({ found }) => found.split(":")[0]));
  expect([...kinds].sort()).toEqual(["dose", "every", "for", "give", "liquid", "neck", "syringe", "tablet", "weight"]);
});

describe("a weight", () => {
  const [dog] = examples;
  const liquid = (weight: string, more = "", collar = "") =>
    (dog?.text ?? "")
      .replace("weight: 24.6 kg", `weight: ${weight}${more}`)
      .replace(
        /medicines:[\s\S]*?collar: .*\n/,
        `medicines:\n  - { name: cephalexin, liquid: 50 mg/mL, dose: 22 mg/kg, every: 12 h, for: 7 days, last given: not given }\n${collar}`,
      )
      .replace("    - cone collar\n", "")
      .replace("    - medicines\n", "");
  const asked = (text: string) => inTheWay(text, "2026-03-02");

  // Weights and necks as size charts for collars and harnesses give them (from memory), the widest shapes among them.
  test.each([
    ["2.5 kg", "22 cm"],
    ["8 kg", "38 cm"],
    ["12 kg", "40 cm"],
    ["24.6 kg", "41 cm"],
    ["30 kg", "38 cm"],
    ["54 lb", "16 in"],
    ["75 kg", "68 cm"],
  ])("of %s goes with a neck of %s, and ten times either way does not", (weight, neck) => {
    const [number = "", unit = ""] = weight.split(" ");
    const with_ = (kg: string) =>
      asked(liquid(`${kg} ${unit}`, "", `collar: { neck: ${neck}, length: 20 cm, until: 2026-03-15 }\n`));
    expect(with_(number)).toEqual([]);
    for (const factor of [10, 0.1])
      expect(with_(new Decimal(number).times(factor).toFixed())).toContain("weight-not-of-neck");
  });

  test("that goes with its neck never goes with it ten times over", () => {
    const unseen = fc.property(
      fc.integer({ min: 50, max: 9500 }),
      fc.integer({ min: 12, max: 80 }),
      (hundredths, neck) => {
        const collar = `collar: { neck: ${neck} cm, length: 20 cm, until: 2026-03-15 }\n`;
        const said = [hundredths, hundredths * 10].map(
          (weight) => asked(liquid(`${weight / 100} kg`, "", collar)).length > 0,
        );
        expect(said).toContain(true);
      },
    );
    fc.assert(unseen, { numRuns: Number(process.env["HEARTHSHEET_CASES"] ?? 60) });
  });

  test("that nothing bears out is asked about where a liquid is drawn up by it", () => {
    expect(asked(liquid("24.6 kg"))).toEqual(["weight-not-borne-out"]);
    expect(asked(liquid("24.6 kg", ", weight before: 24.1 kg"))).toEqual([]);
    expect(asked(liquid("2.46 kg", ", weight before: 24.1 kg"))).toContain("weight-changed");
    expect(asked(liquid("24.6 kg").replace("dose: 22 mg/kg", "dose: 22 mg/kg, give: 10.8 mL"))).toEqual([]);
    expect(asked(liquid("24.6 kg").replace("liquid: 50 mg/mL", "tablet: 500 mg"))).toEqual([]);
  });

  test("of a grown cat needs nothing beside it: ten times either way is no cat", () => {
    const cat = liquid("4.2 kg").replace("species: dog", "species: cat");
    expect(asked(cat)).not.toContain("weight-not-borne-out");
    for (const weight of ["0.42 kg", "42 kg"])
      expect(asked(cat.replace("4.2 kg", weight))).toContain("weight-implausible");
  });
});
