/** Any one number of a plan, ten times or a tenth, is asked about or changes no dose, whatever reasons the right plan had. */
import { readFileSync } from "node:fs";
import { Decimal } from "decimal.js";
import fc from "fast-check";
import { expect, test } from "vitest";
import { computeDoses } from "#compute/doses/doses.js";
import type { Medicine } from "#compute/facts.js";
import { readPlan } from "#plan/read-plan.js";
import { settle, subjectOf } from "#problems/settle.js";
import { medicines, table } from "./help.js";

const numRuns = Number(process.env["HEARTHSHEET_CASES"] ?? 25);
const clinic = { file: "clinic.yaml", bytes: readFileSync("examples/clinic.yaml") };
const prices = { file: "prices.yaml", bytes: readFileSync("examples/prices.yaml") };

type Draft = { text: string; given: string };

const number = (least: number, most: number, places = 0) =>
  fc.integer({ min: least, max: most }).map((n) => new Decimal(n).div(10 ** places).toString());
const animal = fc.oneof(
  fc.record({ species: fc.constant("dog"), kg: number(12, 700, 1) }),
  fc.record({ species: fc.constant("cat"), kg: number(20, 90, 1) }),
);
const pound = "0.45359237";
/** By mouth, with a dose that goes by weight or is one for all. */
const rules = table.flatMap(({ id, regimens, strengths }) =>
  regimens
    .filter(({ route, every }) => route.includes("mouth") && every !== null)
    .map((regimen) => ({ id, regimen, strengths })),
);
const splits = fc.constantFrom("whole", "halves", "quarters");
const steps: Record<string, string> = { whole: "1", halves: "0.5", quarters: "0.25" };

/** Milligrams of one dose that keeps the rule, and how often it is given. */
function ordered({ regimen }: (typeof rules)[number], kg: string, high: boolean) {
  const { dose, every } = regimen;
  const hours = every?.most === 10 ? 8 : (every?.most ?? 24);
  const value = new Decimal((high ? dose.most : dose.least) ?? dose.least ?? "1");
  const perDose = dose.per === "day" ? value.times(hours).div(24) : value;
  const by = dose.unit === "mg" ? "1" : dose.unit === "mg/lb" ? new Decimal(kg).div(pound) : kg;
  return { mass: perDose.times(by), every: `${hours} h` };
}

/** What is given was chosen first; a medicine with a rule is made up so that it keeps the rule, or nearly. */
const medicineFor = (species: string, kg: string) =>
  fc
    .record({
      rule: fc.option(fc.constantFrom(...rules.filter(({ regimen }) => regimen.species.some((of) => of === species))), {
        freq: 3,
      }),
      unknown: fc.constantFrom("moonflower", "dexamethasone"),
      high: fc.boolean(),
      piece: fc.constantFrom("tablet", "capsule", "liquid", "insulin"),
      splits,
      strength: fc.constantFrom("1", "2.5", "5", "10", "16", "25", "50", "68", "100", "250"),
      count: fc.integer({ min: 1, max: 24 }),
      near: fc.constantFrom("1", "1.04", "0.97"),
      told: fc.constantFrom("dose", "give", "both"),
      unit: fc.constantFrom("mg/kg", "mg"),
      often: fc.constantFrom("8 h", "12 h", "24 h", "twice a day", "every other day", "every 3 days"),
      days: fc.integer({ min: 1, max: 28 }),
      needed: fc.boolean(),
      dispense: fc.constantFrom(null, 1, 2),
      taper: fc.boolean(),
      syringe: fc.boolean(),
    })
    .map((one) => {
      const insulin = one.piece === "insulin";
      const step = one.piece === "tablet" ? (steps[one.splits] ?? "1") : one.piece === "liquid" ? "0.1" : "1";
      const unit = insulin ? "units" : one.piece === "liquid" ? "mL" : one.piece;
      const kept = one.rule && !insulin ? ordered(one.rule, kg, one.high) : null;
      const sold = one.rule?.strengths.find(({ form }) => form === one.piece)?.values;
      const strength = kept && sold ? (sold[one.count % sold.length] ?? one.strength) : one.strength;
      const pieces = kept ? kept.mass.div(strength).div(step).round() : new Decimal(one.count);
      const amount = pieces.times(step);
      const mass = kept?.mass ?? amount.times(insulin ? 1 : strength).times(one.near);
      const byKg = one.unit === "mg/kg" || insulin;
      const value = (byKg ? mass.div(kg) : mass).toSignificantDigits(4).toFixed();
      const dose = `dose: ${value} ${insulin ? "IU/kg" : one.unit}`;
      const give = `give: ${amount} ${unit}`;
      const every = kept?.every ?? (insulin ? "12 h" : one.often);
      const often =
        one.needed && every.endsWith(" h") ? [`every: ${every}`, "as needed: at most 1 a day"] : [`every: ${every}`];
      const half = amount.div(2);
      const made = insulin
        ? ["insulin: 40 units/mL", "syringe: U-40", "route: under the skin"]
        : [`${one.piece}: ${strength} ${one.piece === "liquid" ? "mg/mL" : "mg"}`];
      return [
        `name: ${insulin ? "insulin" : (one.rule?.id ?? one.unknown)}`,
        ...made,
        ...(one.piece === "tablet" ? [`splits: ${one.splits}`] : []),
        ...(one.piece === "liquid" && one.syringe ? ["syringe: 0.1 mL"] : []),
        ...(one.told === "dose" ? [dose] : one.told === "give" ? [give] : [dose, give]),
        ...often,
        `for: ${one.days} days`,
        "last given: not given",
        ...(one.dispense && !insulin ? [`dispense: ${amount.times(3 * one.days * one.dispense).ceil()} ${unit}`] : []),
        ...(one.taper && half.mod(step).isZero()
          ? [`next: [{ give: ${half} ${unit}, every: every other day, for: 4 days }]`]
          : []),
      ].join(", ");
    });

const drafts = animal.chain(({ species, kg }) =>
  fc
    .record({
      medicine: medicineFor(species, kg),
      pounds: fc.boolean(),
      before: fc.boolean(),
      neck: fc.boolean(),
    })
    .map(({ medicine, pounds, before, neck }): Draft => {
      const weight = (value: Decimal) =>
        pounds ? `${value.div(pound).toDecimalPlaces(1)} lb` : `${value.toDecimalPlaces(2)} kg`;
      const own = new Decimal(kg);
      const around = own.cbrt().times(14.5).toDecimalPlaces(0);
      return {
        given: medicine,
        text: [
          "format: hearthsheet/1",
          "clinic: clinic.yaml",
          "discharged: 2026-03-02 16:30",
          "clinician: Dr. Noor Haddad",
          `patient: { name: Pip, species: ${species}, sex: spayed female, born: 2019-05, weight: ${weight(own)}${
            before ? `, weight before: ${weight(own.times("1.03"))}` : ""
          } }`,
          "owner: { name: Ama, language: en }",
          "reason: A small wound.",
          "care: [{ topic: sutured-wound, site: left flank }]",
          `medicines: [{ ${medicine} }]`,
          ...(neck ? [`collar: { neck: ${around} cm, length: 20 cm, until: 2026-03-15 }`] : []),
        ].join("\n"),
      };
    }),
);

const read = (text: string) => {
  const bytes = new TextEncoder().encode(text);
  const plan = readPlan({ plan: { file: "plan.yaml", bytes }, clinic, prices }, { today: "2026-03-02" });
  const doses = plan.value ? computeDoses(plan.value, medicines) : null;
  return { problems: [...plan.problems, ...(doses?.problems ?? [])], medicine: doses?.value?.medicines[0] ?? null };
};

/** What an owner would put into the animal, how often and for how long; and how much they have, where that was written. */
const asGiven = (medicine: Medicine | null, field: string) =>
  JSON.stringify([
    medicine?.steps.map(({ give, everyHours, days }) => [give, everyHours, days]),
    medicine?.asNeededMost,
    field === "dispense" ? medicine?.dispense : null,
  ]);

const outside = [
  "dose-over-limit",
  "dose-under-limit",
  "dose-unusual",
  "dose-unit-doubtful",
  "strength-unlisted",
  "many-at-once",
  "dispensed-too-much",
  "syringe-unlikely",
];

const numbers =
  /\b(weight|weight before|neck|tablet|capsule|liquid|insulin|dose|give|every|for|as needed|dispense): (?:at most |every )?(\d+(?:\.\d+)?)/g;

test(
  `no slip of the point reaches the paper unasked (${numRuns} plans)`,
  () => {
    const slipped = new Map<string, number>();
    let built = 0;
    const property = fc.property(drafts, ({ text }) => {
      const right = read(text);
      // A number out of the ordinary is asked about as it is; slipped to an ordinary one, nobody could tell.
      const offRule = right.problems.some(({ code }) => outside.includes(code));
      fc.pre(right.medicine !== null && !offRule);
      built++;
      const asked = right.problems.filter(({ severity }) => severity === "ask");
      const reasons = asked.map((one) => {
        const about = subjectOf(one, right.problems);
        return { problem: one.code, reason: "it is meant", ...(about === null ? {} : { for: about }) };
      });
      for (const found of text.matchAll(numbers)) {
        const [whole, field = "", value = ""] = found;
        const start = found.index + whole.length - value.length;
        for (const factor of [10, 0.1]) {
          const other = new Decimal(value).times(factor).toFixed();
          const wrong = read(text.slice(0, start) + other + text.slice(start + value.length));
          const open = settle(wrong.problems, reasons).open.length;
          const said = `${field}: ${value} -> ${other}`;
          if (open === 0)
            expect([said, asGiven(wrong.medicine, field)]).toEqual([said, asGiven(right.medicine, field)]);
          slipped.set(field, (slipped.get(field) ?? 0) + 1);
        }
      }
    });
    fc.assert(property, { numRuns });
    expect(built).toBe(numRuns);
    for (const field of ["weight", "dose", "give", "for"])
      expect([field, slipped.get(field) ?? 0]).not.toEqual([field, 0]);
  },
  60_000 + numRuns * 2_000,
);
