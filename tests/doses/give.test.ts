/** How much is given, and in what words it is told why it cannot be. The dog weighs 24.6 kg; all amounts are worked by hand. */
import { describe, expect, test } from "vitest";
import { only, q, told, type Written } from "./help.js";

const tablet: Written = { name: "x", tablet: q("100 mg"), splits: "halves" };
const liquid: Written = { name: "x", liquid: q("50 mg/mL") };

describe("what a dose comes to", () => {
  // 375 mg / 24.6 kg = 15.243...; 13.75 x 24.6 = 338.25 mg; 375 / 338.25 = 1.10864...
  test("is told beside what was ordered, for each kilogram", () => {
    const ordered = only({ ...tablet, tablet: q("375 mg"), dose: q("13.75 mg/kg") });
    expect(ordered.active).toEqual({
      amount: q("375 mg"),
      perKg: q("15.24 mg/kg"),
      orderedPerKg: q("13.75 mg/kg"),
      percentOff: "+10.9",
    });
  });

  test("has nothing beside it where only what to give is written", () => {
    const active = { amount: q("375 mg"), perKg: q("15.24 mg/kg"), orderedPerKg: null, percentOff: null };
    expect(only({ ...tablet, tablet: q("375 mg"), give: q("1 tablet") }).active).toEqual(active);
  });

  // 0.1 x 24.6 = 2.46 mL, drawn up as 2.5; 123 mg were ordered, 5 mg/kg, and 125 mg are given; 2 / 123 = 1.6 %.
  test("ordered by volume is drawn up to the next mark, and told in milligrams", () => {
    const { give, active } = only({ ...liquid, dose: q("0.1 mL/kg") });
    expect(give).toEqual(q("2.5 mL"));
    expect(active).toEqual({
      amount: q("125 mg"),
      perKg: q("5.08 mg/kg"),
      orderedPerKg: q("5 mg/kg"),
      percentOff: "+1.6",
    });
  });
});

describe("what cannot be given is told where it is written", () => {
  test("without an amount: at the medicine, or at the step of a taper", () => {
    expect(told("dose-missing", tablet)).toEqual([{ at: "0", medicine: "x" }]);
    const next = [{ every: "24 h", for: q("2 days") }];
    expect(told("dose-missing", { ...tablet, give: q("1 tablet"), next })).toEqual([{ at: "0/next/0", medicine: "x" }]);
  });

  test("in what it does not come in", () => {
    expect(told("give-in-other-unit", { ...tablet, give: q("1 mL") })).toEqual([
      { at: "0/give", medicine: "x", given: "1 mL", context: "tablet" },
    ]);
    expect(told("give-in-other-unit", { ...liquid, give: q("1 tablet") })).toEqual([
      { at: "0/give", medicine: "x", given: "1 tablet", context: "liquid" },
    ]);
  });

  test("less than the smallest part of it", () => {
    expect(told("give-not-measurable", { ...tablet, give: q("0.75 tablets") })).toEqual([
      { at: "0/give", medicine: "x", given: "0.75 tablet", step: "0.5 tablet" },
    ]);
    expect(told("give-not-measurable", { ...liquid, give: q("0.25 mL") })).toEqual([
      { at: "0/give", medicine: "x", given: "0.25 mL", step: "0.1 mL" },
    ]);
  });

  test("of unknown strength", () => {
    const spray: Written = { name: "x", spray: "1 %", route: "skin", dose: q("5 mg") };
    expect(told("strength-missing", spray)).toEqual([{ at: "0/dose", medicine: "x", dose: "5 mg" }]);
    const byVolume = { ...spray, dose: q("0.1 mL/kg") };
    expect(told("strength-missing", byVolume)).toEqual([{ at: "0/dose", medicine: "x", dose: "0.1 mL/kg" }]);
  });

  test("of a strength in another unit, which is told as it stands on the box", () => {
    expect(told("strength-in-other-unit", { ...liquid, liquid: q("40 IU/mL"), dose: q("1 mg/kg") })).toEqual([
      { at: "0/dose", medicine: "x", dose: "1 mg/kg", strength: "40 IU/mL" },
    ]);
    const insulin: Written = { name: "x", insulin: q("40 IU/mL"), syringe: "U-40", route: "under the skin" };
    expect(told("strength-in-other-unit", { ...insulin, dose: q("0.1 mg/kg") })).toEqual([
      { at: "0/dose", medicine: "x", dose: "0.1 mg/kg", strength: "40 IU/mL" },
    ]);
  });

  // 20 mg of tablets of 100 mg are 0.2 tablets, nearer to none than to half of one; 20 mg/kg of 24.6 kg would be 5, and nobody gives 5.
  test("too strong, with how little of it would be given", () => {
    expect(told("strength-too-strong", { ...tablet, dose: q("20 mg") })).toEqual([
      { at: "0/dose", medicine: "x", amount: "0.2", context: "tablet" },
    ]);
  });

  // 12 mg are 0.12 tablets; 12 mg/kg of 24.6 kg are 295.2 mg, 3 tablets to the nearest half.
  test("for the whole animal what makes sense for each kilogram of it", () => {
    expect(told("per-kg-left-out", { ...tablet, dose: q("12 mg") })).toEqual([
      { at: "0/dose", medicine: "x", given: "12 mg", amount: "0.12 tablet", meant: "12 mg/kg", would: "3 tablet" },
    ]);
  });
});

describe("what is asked about an amount", () => {
  test("that is not what the dose comes to", () => {
    expect(told("dose-and-give-differ", { ...tablet, dose: q("4.4 mg/kg"), give: q("1.5 tablets") })).toEqual([
      { at: "0/give", medicine: "x", ordered: "4.4 mg/kg: 1 tablet", given: "1.5 tablet" },
    ]);
  });

  // 100 / 86.9 = 1.15074...; 100 / 118 = 0.84745...
  test("rounded too far either way", () => {
    const whole: Written = { name: "x", tablet: q("100 mg") };
    expect(told("rounding-too-far", { ...whole, dose: q("86.9 mg") })).toEqual([
      { at: "0/dose", medicine: "x", ordered: "86.9 mg", given: "1 tablet", percent: "+15.1", most: 15 },
    ]);
    expect(told("rounding-too-far", { ...whole, dose: q("118 mg") })).toEqual([
      { at: "0/dose", medicine: "x", ordered: "118 mg", given: "1 tablet", percent: "-15.3", most: 15 },
    ]);
  });

  test("rounded too far in a later step of a taper, at that step", () => {
    const next = [{ dose: q("86.9 mg"), every: "24 h", for: q("2 days") }];
    const taper: Written = { name: "x", tablet: q("100 mg"), dose: q("200 mg"), next };
    expect(told("rounding-too-far", taper)).toMatchObject([{ at: "0/next/0/dose", ordered: "86.9 mg" }]);
  });
});
