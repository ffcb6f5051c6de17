/** Every form a clinic sends home, and the mistakes that belong to it. */
import { describe, expect, test } from "vitest";
import { Exact } from "#compute/doses/exact.js";
import { squareMetres } from "#compute/doses/surface.js";
import { codes, doses, only, q, type Setting, type Written } from "./help.js";

const cat: Setting = { species: "cat", weight: q("4.2 kg") };

describe("insulin", () => {
  const insulin: Written = {
    name: "insulin",
    insulin: { value: "40", unit: "IU/mL" },
    syringe: "U-40",
    route: "under the skin",
    give: { value: "2", unit: "unit" },
    container: q("10 mL"),
    "last given": "08:00",
  };

  test("is counted in units, goes home in a vial, and names its syringe", () => {
    const medicine = only(insulin, cat);
    expect(medicine).toMatchObject({ give: { value: "2", unit: "unit" }, dispense: { value: "1", unit: "vial" } });
    expect(medicine.active?.perKg).toEqual({ value: "0.476", unit: "IU/kg" });
    expect(medicine.statements.find(({ id }) => id === "insulin.syringe")?.values).toEqual({ syringe: "U-40" });
  });

  test.each(["U-100", { value: "0.01", unit: "mL" }] as const)("is stopped with another syringe: %j", (syringe) => {
    const { value, problems } = doses([{ ...insulin, syringe }], cat);
    expect(value).toBeNull();
    expect(problems).toContainEqual(expect.objectContaining({ code: "syringe-mismatch", severity: "stop" }));
  });

  test("is stopped without one, and so is a liquid with an insulin syringe", () => {
    expect(codes([{ ...insulin, syringe: undefined }], cat)).toContain("syringe-missing");
    const liquid: Written = { name: "x", liquid: q("10 mg/mL"), syringe: "U-40", give: q("1 mL") };
    expect(codes([liquid])).toContain("syringe-for-insulin");
  });

  test("is asked about ten times either way, and cannot be given in millilitres", () => {
    expect(codes([insulin], cat)).toEqual([]);
    expect(codes([{ ...insulin, give: { value: "20", unit: "unit" } }], cat)).toContain("dose-over-limit");
    const dog = (units: string): Written => ({ ...insulin, give: { value: units, unit: "unit" } });
    expect(codes([dog("10")])).toEqual([]);
    expect(codes([dog("1")])).toContain("dose-under-limit");
    expect(codes([dog("100")])).toContain("dose-over-limit");
    const human: Written = { ...insulin, insulin: { value: "100", unit: "IU/mL" }, syringe: "U-100" };
    expect(codes([human], cat)).toEqual(["not-labelled"]);
    expect(codes([{ ...insulin, give: q("1 mL") }], cat)).toContain("give-in-other-unit");
    expect(codes([{ ...insulin, insulin: { value: "400", unit: "IU/mL" } }], cat)).toContain("syringe-mismatch");
  });

  test("goes by weight to the nearest unit", () => {
    const { give, active } = only({ ...insulin, give: undefined, dose: { value: "0.5", unit: "IU/kg" } }, cat);
    expect([give.value, active?.percentOff]).toEqual(["2", "-4.8"]);
  });
});

describe("forms that are counted and not weighed", () => {
  test.each<[Written, object]>([
    [
      { name: "x", spray: "1 %", route: "skin", give: { value: "2", unit: "spray" } },
      { value: "1", unit: "bottle" },
    ],
    [
      {
        name: "fentanyl",
        patch: "25 mcg/h",
        route: "skin",
        give: { value: "1", unit: "patch" },
        every: "72 h",
        for: q("6 days"),
      },
      { value: "2", unit: "patch" },
    ],
    [
      { name: "x", ointment: "20 mg/g", route: "ear", give: { value: "1.5", unit: "in" } },
      { value: "1", unit: "tube" },
    ],
    [
      { name: "x", ointment: "1 %", route: "eye", give: { value: "0.5", unit: "cm" } },
      { value: "1", unit: "tube" },
    ],
    [
      { name: "x", ointment: "1 %", route: "skin", give: { value: "1", unit: "application" } },
      { value: "1", unit: "tube" },
    ],
  ])("%j", (written, dispense) => {
    expect(only(written)).toMatchObject({ give: written.give, dispense, active: null });
  });

  test.each<[string, Written]>([
    ["give-not-measurable", { name: "x", ointment: "1 %", route: "eye", give: { value: "0.3", unit: "cm" } }],
    ["many-at-once", { name: "x", ointment: "1 %", route: "ear", give: { value: "15", unit: "in" } }],
    ["many-at-once", { name: "x", spray: "1 %", route: "skin", give: { value: "20", unit: "spray" } }],
    ["many-at-once", { name: "x", patch: "25 mcg/h", route: "skin", give: { value: "10", unit: "patch" } }],
    ["give-in-other-unit", { name: "x", spray: "1 %", route: "skin", give: q("2 drops") }],
    ["strength-missing", { name: "x", spray: "1 %", route: "skin", dose: q("5 mg") }],
    ["form-twice", { name: "x", spray: "1 %", patch: "2", give: { value: "1", unit: "spray" } }],
  ])("%s", (code, written) => expect(codes([written])).toContain(code));

  test("a patch is told how to be kept and thrown away", () => {
    const patch: Written = { name: "fentanyl", patch: "25 mcg/h", route: "skin", give: { value: "1", unit: "patch" } };
    expect(only(patch).statements.map(({ id }) => id)).toContain("all.patch");
  });
});

describe("a dose by body surface", () => {
  // Conversion tables of oncology texts, which cut their figures short (from memory): square metres of a dog, and of a cat.
  test.each([
    ["dog", "1", 0.1],
    ["dog", "5", 0.29],
    ["dog", "10", 0.46],
    ["dog", "20", 0.74],
    ["dog", "30", 0.96],
    ["cat", "3", 0.208],
    ["cat", "4", 0.252],
    ["cat", "5", 0.292],
  ] as const)("of a %s of %s kg is %f square metres", (species, kg, published) => {
    expect(squareMetres({ kg: new Exact(kg), species }).toNumber() / published).toBeCloseTo(1, 1.3);
  });

  // 250 mg/m2 x 10.1 x 24600 g ^ (2/3) / 10000 = 213.58 mg, by a pocket calculator.
  test("comes to milligrams", () => {
    const { active, give } = only({
      name: "x",
      tablet: q("50 mg"),
      dose: { value: "250", unit: "mg/m2" },
      every: "24 h",
    });
    expect([give.value, active?.amount.value, active?.percentOff]).toEqual(["4", "200", "-6.4"]);
  });
});

describe("what is said of a medicine", () => {
  const unknown: Written = { name: "moonflower", tablet: q("1 mg"), give: q("1 tablet") };

  test("that the table does not hold is what is said of all", () => {
    const said = only(unknown).statements.map(({ id }) => id);
    expect(said).toEqual(expect.arrayContaining(["all.missed-dose", "all.too-much", "all.keep-away", "all.left-over"]));
  });

  test("of a missed dose is what the clinician says, where the plan has it", () => {
    const { missed, statements } = only({ ...unknown, missed: "Give it within two hours, or leave it out." });
    expect(missed).toEqual({ en: "Give it within two hours, or leave it out." });
    expect(statements.map(({ id }) => id)).not.toContain("all.missed-dose");
  });
});
