/** The one form a plan names: what a unit of it holds, and what is told where it names none, several, or the wrong syringe. */
import { describe, expect, test } from "vitest";
import { codes, only, q, told, type Written } from "./help.js";

describe("a strength", () => {
  test.each<[Written, { form: string; strength: object; amount: object }]>([
    [
      { name: "x", tablet: q("375 mg"), give: q("2 tablets") },
      { form: "tablet", strength: q("375 mg"), amount: q("750 mg") },
    ],
    [
      { name: "x", capsule: q("50 mg"), give: q("2 capsules") },
      { form: "capsule", strength: q("50 mg"), amount: q("100 mg") },
    ],
    [
      { name: "x", liquid: q("50 mg/mL"), give: q("1.5 mL") },
      { form: "liquid", strength: q("50 mg/mL"), amount: q("75 mg") },
    ],
    [
      { name: "x", liquid: q("40 IU/mL"), give: q("0.5 mL") },
      { form: "liquid", strength: q("40 IU/mL"), amount: q("20 IU") },
    ],
  ])("is told as on the box, and what is given by what a unit holds: %j", (written, { form, strength, amount }) => {
    expect(only(written)).toMatchObject({ form, strength, active: { amount } });
  });

  test("of what has only words for it is those words", () => {
    const drops: Written = { name: "x", drops: "0.3 %", route: "left eye", give: q("1 drop") };
    const ointment: Written = { name: "x", ointment: "1 %", route: "left ear", give: q("1 application") };
    const spray: Written = { name: "x", spray: "0.1 %", route: "skin", give: q("1 spray") };
    const patch: Written = { name: "x", patch: "25 mcg/h", route: "skin", give: q("1 patch"), every: "72 h" };
    const box = (written: Written) => [only(written).form, only(written).onBox, only(written).strength];
    expect(box(drops)).toEqual(["drops", "0.3 %", null]);
    expect(box(ointment)).toEqual(["ointment", "1 %", null]);
    expect(box(spray)).toEqual(["spray", "0.1 %", null]);
    expect(box(patch)).toEqual(["patch", "25 mcg/h", null]);
    expect(box({ name: "x", tablet: q("5 mg"), give: q("1 tablet") })).toEqual(["tablet", null, q("5 mg")]);
  });
});

describe("the smallest part", () => {
  const step = (written: Written) => told("give-not-measurable", written).map((one) => one["step"]);
  const tablet: Written = { name: "x", tablet: q("5 mg"), give: q("0.3 tablets") };
  const liquid: Written = { name: "x", liquid: q("5 mg/mL"), give: q("0.33 mL") };
  const ointment: Written = { name: "x", ointment: "1 %", route: "left eye" };

  test("is what the plan lets a tablet be cut into, or the mark of its syringe", () => {
    expect(step(tablet)).toEqual(["1 tablet"]);
    expect(step({ ...tablet, splits: "whole" })).toEqual(["1 tablet"]);
    expect(step({ ...tablet, splits: "halves" })).toEqual(["0.5 tablet"]);
    expect(step({ ...tablet, splits: "quarters" })).toEqual(["0.25 tablet"]);
    expect(step(liquid)).toEqual(["0.1 mL"]);
    expect(step({ ...liquid, syringe: q("0.2 mL") })).toEqual(["0.2 mL"]);
  });

  test("of an ointment is half a centimetre, a quarter of an inch, or one application", () => {
    expect(step({ ...ointment, give: q("0.7 cm") })).toEqual(["0.5 cm"]);
    expect(step({ ...ointment, give: q("0.3 in") })).toEqual(["0.25 in"]);
    expect(step({ ...ointment, give: q("0.5 applications") })).toEqual(["1 application"]);
    expect(codes([{ ...ointment, give: q("1 mL") }])).toContain("give-in-other-unit");
    expect(codes([{ ...ointment, dose: q("1 mg") }])).toContain("strength-missing");
  });

  test("of what is counted is one", () => {
    expect(step({ name: "x", drops: "0.3 %", route: "left eye", give: q("1.5 drops") })).toEqual(["1 drop"]);
    expect(step({ name: "x", patch: "5", route: "skin", give: q("0.5 patch") })).toEqual(["1 patch"]);
    expect(step({ name: "x", capsule: q("5 mg"), give: q("0.5 capsule") })).toEqual(["1 capsule"]);
  });
});

describe("what goes home", () => {
  test.each<[Written, string]>([
    [{ name: "x", drops: "0.3 %", route: "left eye", give: q("1 drop") }, "bottle"],
    [{ name: "x", spray: "1 %", route: "skin", give: q("1 spray") }, "bottle"],
    [{ name: "x", ointment: "1 %", route: "left ear", give: q("1 cm") }, "tube"],
    [{ name: "x", insulin: q("40 IU/mL"), syringe: "U-40", route: "under the skin", give: q("4 units") }, "vial"],
    [{ name: "x", patch: "5", route: "skin", give: q("1 patch"), every: "72 h" }, "patch"],
    [{ name: "x", capsule: q("5 mg"), give: q("1 capsule") }, "capsule"],
    [{ name: "x", liquid: q("5 mg/mL"), give: q("1 mL") }, "mL"],
  ])("of %j is counted in %s", (written, unit) => expect(only(written).dispense.unit).toBe(unit));
});

describe("what is told at the medicine", () => {
  test("where no form is named, or several, by their names", () => {
    expect(told("form-missing", { name: "x", give: q("1 tablet") })).toEqual([{ at: "0", medicine: "x" }]);
    const both: Written = { name: "x", tablet: q("1 mg"), liquid: q("1 mg/mL"), give: q("1 tablet") };
    expect(told("form-twice", both)).toEqual([{ at: "0", medicine: "x", forms: ["tablet", "liquid"] }]);
    const insulin: Written = { name: "x", insulin: q("40 IU/mL"), syringe: "U-40", patch: "5", give: q("1 patch") };
    expect(told("form-twice", insulin)).toEqual([{ at: "0", medicine: "x", forms: ["patch", "insulin"] }]);
  });

  test("where insulin has no syringe; at the syringe, where it is another one's", () => {
    const insulin: Written = { name: "x", insulin: q("40 IU/mL"), route: "under the skin", give: q("4 units") };
    expect(told("syringe-missing", insulin)).toEqual([{ at: "0", medicine: "x", strength: "40 IU/mL" }]);
    const mismatch = { at: "0/syringe", medicine: "x", strength: "40 IU/mL" };
    expect(told("syringe-mismatch", { ...insulin, syringe: "U-100" })).toEqual([{ ...mismatch, syringe: "U-100" }]);
    expect(told("syringe-mismatch", { ...insulin, syringe: q("0.1 mL") })).toEqual([
      { ...mismatch, syringe: "0.1 mL" },
    ]);
    const liquid: Written = { name: "x", liquid: q("10 mg/mL"), syringe: "U-40", give: q("1 mL") };
    expect(told("syringe-for-insulin", liquid)).toEqual([{ at: "0/syringe", medicine: "x" }]);
  });
});
