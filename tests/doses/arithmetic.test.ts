/** Doses against a general library of units and fractions (mathjs), which carries the units itself and never rounds. */
import fc from "fast-check";
import { all, create, type FactoryFunctionMap, type Fraction, type Unit } from "mathjs";
import { expect, test } from "vitest";
import { doses, q } from "./help.js";

const numRuns = Number(process.env["HEARTHSHEET_CASES"] ?? 200);
const math = create(all as FactoryFunctionMap, { number: "Fraction" });

// The library takes its pound for the nearest simple fraction, 5e-15 off; here it is the international one, exactly.
const itsPound = math.unit(1, "lb").toNumber("kg");
math.createUnit(
  "lb",
  { definition: math.unit(math.fraction("0.45359237") as unknown as number, "kg") },
  { override: true },
);

const of = (value: string, unit: string): Unit => math.unit(math.fraction(value) as unknown as number, unit);
const inUnits = (quantity: Unit, unit: string): Fraction => quantity.toNumeric(unit) as Fraction;
const times = (one: Unit, other: Unit) => math.multiply(one, other) as unknown as Unit;
const fraction = (value: string | number): Fraction => math.fraction(value);

const decimal = (least: number, most: number, places: number) =>
  fc.integer({ min: least, max: most }).map((value) => {
    const digits = String(value).padStart(places + 1, "0");
    return `${digits.slice(0, -places)}.${digits.slice(-places)}`;
  });

const cases = fc.record({
  weight: decimal(5, 950, 1),
  pounds: fc.boolean(),
  dose: decimal(10, 9999, 2),
  doseUnit: fc.constantFrom("mg/kg" as const, "mg/lb" as const, "mg" as const),
  strength: decimal(50, 99999, 2),
  liquid: fc.boolean(),
  splits: fc.constantFrom("whole" as const, "halves" as const, "quarters" as const),
  days: fc.integer({ min: 1, max: 9 }),
});

const steps = { whole: "1", halves: "0.5", quarters: "0.25" };
/** What can be given may be so far above what was ordered without a question (compute/doses/give.ts). */
const mostAbove = fraction("1.15");

test(
  `what is given is the nearest that can be, its true dose is exact, and no more goes in than was ordered (${numRuns} cases)`,
  () => {
    let given = 0;
    fc.assert(
      fc.property(cases, ({ weight, pounds, dose, doseUnit, strength, liquid, splits, days }) => {
        const body = of(weight, pounds ? "lb" : "kg");
        const mass = doseUnit === "mg" ? of(dose, "mg") : times(of(dose, doseUnit), body);
        const step = fraction(liquid ? "0.1" : steps[splits]);
        const ordered = inUnits(mass, "mg");
        // To the nearest step; what lies in the middle goes down.
        const count = ordered.div(fraction(strength)).div(step).sub(fraction("0.5")).ceil();
        fc.pre(count.compare(0) > 0);
        given++;

        const form = liquid
          ? { liquid: { value: strength, unit: "mg/mL" as const } }
          : { tablet: { value: strength, unit: "mg" as const }, splits };
        const { value, problems } = doses(
          [
            {
              name: "something",
              every: "24 h",
              for: { value: String(days), unit: "day" },
              "last given": "not given",
              dose: { value: dose, unit: doseUnit },
              ...form,
            },
          ],
          { weight: { value: weight, unit: pounds ? "lb" : "kg" } },
        );
        const [medicine] = value?.medicines ?? [];
        if (!medicine?.active) throw new Error(JSON.stringify(problems));

        const give = count.mul(step);
        const holds = give.mul(fraction(strength));
        expect(fraction(medicine.give.value).equals(give)).toBe(true);
        expect(fraction(medicine.active.amount.value).equals(holds)).toBe(true);
        const perKg = holds.div(inUnits(body, "kg")).valueOf();
        expect(Number(medicine.active.perKg.value) / perKg).toBeCloseTo(1, 2);
        const off = holds.div(ordered).sub(1).mul(100).valueOf();
        expect(Math.abs(Number(medicine.active.percentOff) - off)).toBeLessThan(0.0501);

        const cells = value?.chart?.rows.flatMap((row) => row.cells).filter((cell) => cell !== null) ?? [];
        const onChart = cells.reduce((sum, cell) => sum.add(fraction(cell.give.value)), fraction(0));
        const home = fraction(medicine.dispense.value).sub(fraction(medicine.leftOver.value));
        expect(onChart.equals(give.mul(days))).toBe(true);
        expect(home.equals(onChart)).toBe(true);
        const asked = problems.some(({ code }) => code === "rounding-too-far");
        if (!asked)
          expect(onChart.mul(fraction(strength)).compare(ordered.mul(days).mul(mostAbove))).toBeLessThanOrEqual(0);
      }),
      { numRuns },
    );
    expect(given).toBeGreaterThan(numRuns / 4);
  },
  30_000 + numRuns * 100,
);

test("a pound and a dose for each are what the library says they are", () => {
  expect(itsPound).toBeCloseTo(0.45359237, 12);
  expect(inUnits(times(of("6.25", "mg/lb"), of("10", "lb")), "mg").equals(fraction("62.5"))).toBe(true);
  const [medicine] =
    doses([{ name: "x", tablet: q("62.5 mg"), dose: q("6.25 mg/lb"), every: "24 h" }], { weight: q("10 lb") }).value
      ?.medicines ?? [];
  expect(medicine?.give.value).toBe("1");
});
