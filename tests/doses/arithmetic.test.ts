/** Doses against whole-number fractions (BigInt), which know no rounding at all. */
import fc from "fast-check";
import { expect, test } from "vitest";
import { only, q } from "./help.js";

const numRuns = Number(process.env["HEARTHSHEET_CASES"] ?? 300);

type Fraction = { over: bigint; under: bigint };
const fraction = (text: string): Fraction => {
  const [whole = "", decimals = ""] = text.split(".");
  return { over: BigInt(whole + decimals), under: 10n ** BigInt(decimals.length) };
};
const times = (a: Fraction, b: Fraction): Fraction => ({ over: a.over * b.over, under: a.under * b.under });
const by = (a: Fraction, b: Fraction): Fraction => ({ over: a.over * b.under, under: a.under * b.over });
/** The nearest whole number; what lies in the middle goes down. */
const nearest = ({ over, under }: Fraction): bigint => {
  const rest = 2n * (over % under);
  return over / under + (rest > under ? 1n : 0n);
};
const asNumber = ({ over, under }: Fraction) => Number((over * 10n ** 15n) / under) / 1e15;

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
});

const steps = { whole: "1.0", halves: "0.5", quarters: "0.25" };
const pound = fraction("0.45359237");

test(
  `what is given is the nearest that can be, and its true dose is exact (${numRuns} cases)`,
  () => {
    let given = 0;
    fc.assert(
      fc.property(cases, ({ weight, pounds, dose, doseUnit, strength, liquid, splits }) => {
        const kg = pounds ? times(fraction(weight), pound) : fraction(weight);
        const lb = pounds ? fraction(weight) : by(fraction(weight), pound);
        const factor = { "mg/kg": kg, "mg/lb": lb, mg: fraction("1.0") }[doseUnit];
        const mass = times(fraction(dose), factor);
        const step = fraction(liquid ? "0.1" : steps[splits]);
        const count = nearest(by(by(mass, fraction(strength)), step));
        fc.pre(count > 0n);
        given++;

        const form = liquid
          ? { liquid: { value: strength, unit: "mg/mL" as const } }
          : { tablet: { value: strength, unit: "mg" as const }, splits };
        const medicine = only(
          { name: "something", every: "24 h", for: q("1 day"), dose: { value: dose, unit: doseUnit }, ...form },
          { weight: { value: weight, unit: pounds ? "lb" : "kg" } },
        );
        const holds = times(times({ over: count, under: 1n }, step), fraction(strength));
        expect(Number(medicine.give.value)).toBe(asNumber(times({ over: count, under: 1n }, step)));
        expect(Number(medicine.active?.amount.value)).toBeCloseTo(asNumber(holds), 9);
        expect(Number(medicine.active?.perKg.value) / asNumber(by(holds, kg))).toBeCloseTo(1, 2);
        const off = (asNumber(by(holds, mass)) - 1) * 100;
        expect(Math.abs(Number(medicine.active?.percentOff) - off)).toBeLessThan(0.0501);
      }),
      { numRuns },
    );
    expect(given).toBeGreaterThan(numRuns / 4);
  },
  30_000 + numRuns * 100,
);
