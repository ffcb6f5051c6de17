/** What a doubted dose is told by: numbers that show what is wrong, in a unit that can be compared. */
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { codes, doses, q, type Setting, type Written } from "./help.js";

const values = (medicine: Written, code: string, setting: Setting = {}) =>
  doses([medicine], setting).problems.find((one) => one.code === code)?.values as
    | Record<string, string | undefined>
    | undefined;
const clav: Written = { name: "amoxicillin-clavulanate", tablet: q("375 mg"), dose: q("13.75 mg/kg") };
const carprofen: Written = {
  name: "carprofen",
  tablet: q("75 mg"),
  splits: "halves",
  dose: q("4.4 mg/kg"),
  every: "24 h",
};

describe("a dose over or under its limit", () => {
  test("is told by what is given where only that is, in the unit of the dose, with the limit in it too", () => {
    const light: Setting = { weight: q("15 kg") };
    expect(values(clav, "dose-over-limit", light)).toMatchObject({
      given: "1 tablet (25 mg/kg)",
      limit: "6.25 mg/lb / 12 h (13.78 mg/kg)",
    });
    expect(values({ ...carprofen, splits: "whole" }, "dose-under-limit", { weight: q("24.6 kg") })).toMatchObject({
      given: "1 tablet (3.05 mg/kg)",
      limit: "2 mg/lb / 24 h (4.41 mg/kg)",
    });
    expect(values({ ...clav, dose: q("6.25 mg/lb") }, "dose-over-limit", light)).toMatchObject({
      given: "1 tablet (11.34 mg/lb)",
      limit: "6.25 mg/lb / 12 h",
    });
  });

  test("is told as ordered where that is over itself", () => {
    expect(values({ ...clav, dose: q("25 mg/kg") }, "dose-over-limit")).toMatchObject({ given: "25 mg/kg" });
  });

  test("of a rule by the day is held against what of it one dose may be", () => {
    const twice: Written = { name: "enrofloxacin", tablet: q("68 mg"), splits: "quarters", dose: q("11 mg/kg") };
    expect(values(twice, "dose-over-limit")).toMatchObject({
      given: "11 mg/kg",
      limit: "20 mg/kg/day (10 mg/kg / 12 h)",
    });
  });

  test("is seen to be over in the numbers told, however little it is", () => {
    let seen = 0;
    for (let tenths = 30; tenths <= 900; tenths += 7)
      for (const medicine of [clav, carprofen]) {
        const told = values(medicine, "dose-over-limit", { weight: { value: String(tenths / 10), unit: "kg" } });
        if (!told) continue;
        const given = Number(/\(([\d.]+) mg\/kg\)$/.exec(told["given"] ?? "")?.[1]);
        const limit = Number(/\(([\d.]+) mg\/kg\)$/.exec(told["limit"] ?? "")?.[1]);
        expect(given).toBeGreaterThan(limit);
        seen++;
      }
    expect(seen).toBeGreaterThan(20);
  });

  test("is said to be ten times, or a tenth, where the point may have slipped", () => {
    expect(values({ ...clav, dose: q("137.5 mg/kg") }, "dose-over-limit")).toMatchObject({ context: "tenfold" });
    expect(values({ ...clav, dose: q("25 mg/kg") }, "dose-over-limit")).toMatchObject({ context: "" });
    const tenth: Written = { ...clav, tablet: q("62.5 mg"), splits: "halves", dose: q("1.375 mg/kg") };
    expect(values(tenth, "dose-under-limit")).toMatchObject({ context: "tenth" });
    const words = JSON.parse(readFileSync("locales/en/problems/doses.json", "utf8"));
    expect(words["dose-over-limit"].what_tenfold).toContain("ten times");
    expect(words["dose-under-limit"].what_tenth).toContain("a tenth");
  });
});

describe("too little to take home", () => {
  const few: Written = { ...clav, dispense: q("14 tablet") };

  test("follows from the dose where that is doubted, and still stops", () => {
    const { problems } = doses([{ ...few, dose: q("137.5 mg/kg") }]);
    const found = problems.filter(({ code }) => code === "dispensed-too-little");
    expect(found.map(({ severity, values }) => [severity, values])).toEqual([
      ["stop", { medicine: clav.name, given: "14 tablet", needed: "126 tablet", context: "dose" }],
    ]);
    const order = problems.map(({ code }) => code);
    expect(order.indexOf("dose-over-limit")).toBeLessThan(order.indexOf("dispensed-too-little"));
  });

  test("stands alone where the dose does not", () => {
    expect(values({ ...few, dispense: q("13 tablet") }, "dispensed-too-little")).toMatchObject({ context: "" });
  });
});

describe("milligrams that may be meant for each kilogram", () => {
  test("are asked back where they cannot be given, and by weight could", () => {
    expect(values({ ...clav, dose: q("13.75 mg") }, "per-kg-left-out")).toEqual({
      medicine: clav.name,
      given: "13.75 mg",
      amount: "0.0367 tablet",
      meant: "13.75 mg/kg",
      would: "1 tablet",
    });
    expect(codes([{ ...clav, dose: q("13.75 mg") }])).not.toContain("strength-too-strong");
  });

  test("are too little for the strength where by weight they would be no sensible amount either", () => {
    expect(codes([{ ...clav, tablet: q("4800 mg"), dose: q("13.75 mg") }])).toContain("strength-too-strong");
    expect(codes([{ ...clav, dose: q("100 mg") }])).toContain("strength-too-strong");
    expect(codes([{ ...clav, dose: q("0.1 mg/kg") }])).toContain("strength-too-strong");
  });
});
