/** Numbers that nothing else bears out: ten times as much, or a tenth, would be asked about no more than they are. */
import { describe, expect, test } from "vitest";
import { q, told, type Written } from "./help.js";

// Half a tablet of 100 mg: 5 tablets would be asked about, a twentieth of one cannot be given.
const tablets: Written = { name: "x", tablet: q("100 mg"), splits: "halves", give: q("0.5 tablets"), for: q("7 days") };
// 1 mL: a tenth of it is on the first mark of the usual syringe, ten are less than a millilitre a kilogram.
const liquid: Written = { name: "x", liquid: q("50 mg/mL"), give: q("1 mL"), for: q("7 days") };

const dose = (written: Written) => told("dose-not-borne-out", written);
const days = (written: Written) => told("days-not-borne-out", written);

describe("an amount", () => {
  test("that ten times over is asked about, and a tenth of which cannot be given, is borne out", () => {
    expect(dose(tablets)).toEqual([]);
  });

  test("that may be ten times too much or too little is told at the first of its numbers, with all of them", () => {
    expect(dose(liquid)).toEqual([{ at: "0/give", medicine: "x", numbers: "1 mL", context: "give" }]);
    expect(dose({ ...liquid, give: undefined, dose: q("2 mg/kg") })).toEqual([
      { at: "0/dose", medicine: "x", numbers: "2 mg/kg, 50 mg/mL", context: "dose" },
    ]);
  });

  // 50 mg / 50 mg/mL is 1 mL, written beside it: with one of the two ten times over they differ.
  test("is borne out by what it comes to", () => {
    expect(dose({ ...liquid, dose: q("50 mg") })).toEqual([]);
  });

  test("of a later step is told at that step", () => {
    const next = [{ give: q("1 mL"), every: "24 h", for: q("7 days") }];
    const first: Written = { ...liquid, dose: q("50 mg"), next };
    expect(dose(first)).toEqual([{ at: "0/next/0/give", medicine: "x", numbers: "1 mL", context: "give" }]);
    const byDose = [{ dose: q("2 mg/kg"), every: "24 h", for: q("7 days") }];
    expect(dose({ ...first, next: byDose })).toMatchObject([{ at: "0/next/0/dose", numbers: "2 mg/kg" }]);
  });
});

describe("days", () => {
  test("of which ten times as many are asked about, and a tenth is no whole number, are borne out", () => {
    expect(days(tablets)).toEqual([]);
  });

  test("that may be ten times too many or too few are told at the first, with all of them", () => {
    expect(days({ ...tablets, for: q("3 days") })).toEqual([{ at: "0/for", medicine: "x", days: "3" }]);
    const next = [{ give: q("0.5 tablets"), every: "24 h", for: q("10 days") }];
    expect(days({ ...tablets, next })).toEqual([{ at: "0/next/0/for", medicine: "x", days: "10" }]);
    expect(days({ ...tablets, for: q("1 day"), next })).toEqual([{ at: "0/for", medicine: "x", days: "1, 10" }]);
  });

  // Twelve-hourly for three days from 16:00 on the 2nd: the last dose is at 20:00 on the 5th.
  test("are borne out by the last day, or by how much goes home", () => {
    expect(days({ ...tablets, for: q("3 days"), "last given": "16:00", until: "2026-03-05" })).toEqual([]);
    expect(days({ ...tablets, for: q("3 days"), dispense: q("3 tablets") })).toEqual([]);
  });

  // The label gives it for five to seven days: four are worth a note, no question.
  test("are not borne out by a note", () => {
    const amoxicillin: Written = { name: "amoxicillin", capsule: q("250 mg"), dose: q("5 mg/lb") };
    expect(days({ ...amoxicillin, for: q("40 days") })).toEqual([{ at: "0/for", medicine: "amoxicillin", days: "40" }]);
  });

  test("are borne out by the last day it may be used only where ten times as many go past it", () => {
    const three: Written = { ...tablets, for: q("3 days"), "last given": "16:00" };
    expect(days({ ...three, expires: "2026-03-31" })).toEqual([]);
    expect(days({ ...three, expires: "2026-04-30" })).toHaveLength(1);
  });
});
