/** What is more likely a slip of the pen, from which amount on. The dog weighs 24.6 kg. */
import { describe, expect, test } from "vitest";
import { only, q, told, type Written } from "./help.js";

const tablets: Written = { name: "x", tablet: q("100 mg"), splits: "halves" };
const ointment: Written = { name: "x", ointment: "1 %", route: "left ear" };
const liquid: Written = { name: "x", liquid: q("50 mg/mL"), give: q("1 mL") };

describe("many at once", () => {
  test.each<[string, string, Written]>([
    ["4 tablet", "4.5 tablet", tablets],
    ["4 capsule", "5 capsule", { name: "x", capsule: q("100 mg") }],
    ["8 drop", "9 drop", { name: "x", drops: "0.3 %", route: "left eye" }],
    ["2 application", "3 application", ointment],
    ["4 cm", "4.5 cm", ointment],
    ["2 in", "2.25 in", ointment],
    ["6 spray", "7 spray", { name: "x", spray: "1 %", route: "skin" }],
    ["2 patch", "3 patch", { name: "x", patch: "25 mcg/h", route: "skin", every: "72 h" }],
    ["60 unit", "61 unit", { name: "x", insulin: q("40 IU/mL"), syringe: "U-40", route: "under the skin" }],
    ["24.6 mL", "24.7 mL", liquid],
  ])("%s is not, %s is", (most, given, written) => {
    const [value = "", unit = ""] = given.split(" ");
    const give = (amount: string, of: string) => ({ ...written, give: { value: amount, unit: of as "mL" } });
    expect(told("many-at-once", give(value, unit))).toEqual([{ at: "0/give", medicine: "x", given, most }]);
    expect(told("many-at-once", give(most.split(" ")[0] ?? "", unit))).toEqual([]);
  });

  test("is told where it was written: a dose, or a later step", () => {
    expect(told("many-at-once", { ...tablets, dose: q("500 mg") })).toMatchObject([
      { at: "0/dose", given: "5 tablet" },
    ]);
    const next = [{ give: q("5 tablets"), every: "12 h", for: q("2 days") }];
    expect(told("many-at-once", { ...tablets, give: q("1 tablet"), next })).toMatchObject([{ at: "0/next/0/give" }]);
  });
});

describe("a syringe", () => {
  const drawn = (give: `${number} mL`) => told("syringe-unlikely", { ...liquid, give: q(give), syringe: q("0.1 mL") });
  const values = { at: "0/syringe", medicine: "x", syringe: "0.1 mL" };

  test("is asked about where what is drawn up lies below its third mark, or past its sixtieth", () => {
    expect(drawn("0.2 mL")).toEqual([{ ...values, given: "0.2 mL", context: "low" }]);
    expect(drawn("0.3 mL")).toEqual([]);
    expect(drawn("6 mL")).toEqual([]);
    expect(drawn("6.1 mL")).toEqual([{ ...values, given: "6.1 mL", context: "high" }]);
  });

  test("that the plan does not name, or that a tablet does not need, is not asked about", () => {
    expect(told("syringe-unlikely", { ...liquid, give: q("0.1 mL") })).toEqual([]);
    expect(told("syringe-unlikely", { ...tablets, give: q("1 tablet"), syringe: q("0.1 mL") })).toEqual([]);
  });
});

describe("a strength", () => {
  const carprofen: Written = { name: "carprofen", every: "24 h", tablet: q("100 mg"), give: q("1 tablet") };

  test("that is not sold is told with those that are", () => {
    expect(told("strength-unlisted", { ...carprofen, tablet: q("1000 mg") })).toEqual([
      {
        at: "0/tablet",
        medicine: "carprofen",
        strength: "1000 mg",
        known: ["25 mg", "75 mg", "100 mg"],
        source: expect.stringContaining("21 CFR 520.304(a)"),
      },
    ]);
  });

  test("is held only against those of its own form and unit", () => {
    for (const mg of ["25", "75", "100.0"])
      expect(told("strength-unlisted", { ...carprofen, tablet: { value: mg, unit: "mg" } })).toEqual([]);
    expect(told("strength-unlisted", { ...carprofen, tablet: q("1000 IU") })).toEqual([]);
    expect(told("strength-unlisted", { ...carprofen, tablet: undefined, capsule: q("1000 mg") })).toEqual([]);
  });
});

test("nothing of all this stops the paper", () => {
  expect(only({ ...tablets, give: q("5 tablets") }).give).toEqual(q("5 tablets"));
});
