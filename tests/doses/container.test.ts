/** Drops, ointments, sprays and insulin go home in bottles, tubes and vials: how many, and what each of them holds. */
import { Decimal } from "decimal.js";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { codes, doses, only, q, type Written } from "./help.js";

const drops: Written = { name: "x", drops: "0.3 %", route: "left eye", give: q("1 drop"), every: "8 h" };
const insulin: Written = {
  name: "insulin",
  insulin: q("40 IU/mL"),
  syringe: "U-40",
  route: "under the skin",
  give: q("10 units"),
};
const asked = (written: Written) => codes([written]).filter((code) => !/unknown|label-lacks|not-labelled/.test(code));
const needed = (written: Written) =>
  doses([written]).problems.flatMap((one) => (one.code === "container-not-said" ? [one.values.needed] : []));

describe("what is needed in millilitres", () => {
  test("drops at 20 a millilitre, or as many as the plan says, twice that for both eyes", () => {
    expect(needed(drops)).toEqual(["1.05 mL"]);
    expect(needed({ ...drops, route: "both eyes" })).toEqual(["2.1 mL"]);
    expect(needed({ ...drops, "drops per mL": 35 })).toEqual(["0.6 mL"]);
  });

  test("insulin by its strength", () => expect(needed(insulin)).toEqual(["3.5 mL"]));

  test("nobody can reckon it for an ointment or a spray", () => {
    expect(needed({ name: "x", ointment: "1 %", route: "left eye", give: q("1 application") })).toEqual([""]);
    expect(needed({ name: "x", spray: "0.1 %", route: "skin", give: q("2 sprays") })).toEqual([""]);
  });

  test("of tablets and liquids nothing is said of bottles", () => {
    expect(needed({ name: "x", tablet: q("50 mg"), give: q("1 tablet") })).toEqual([]);
    expect(needed({ name: "x", liquid: q("50 mg/mL"), give: q("1 mL") })).toEqual([]);
  });
});

describe("how many go home", () => {
  test("one holds it, or as many as do", () => {
    expect(only({ ...drops, container: q("5 mL") })).toMatchObject({ dispense: q("1 bottle"), holds: q("5 mL") });
    const long = { ...insulin, for: q("28 days"), container: q("10 mL") };
    expect(only(long).dispense).toEqual(q("2 vials"));
    expect(only({ ...insulin, for: q("20 days"), dispense: q("1 vial"), container: q("10 mL") }).dispense).toEqual(
      q("1 vial"),
    );
  });

  test("an opened one keeps only so long", () => {
    const long: Written = { ...insulin, give: q("3 units"), for: q("30 days"), container: q("10 mL") };
    expect(only(long).dispense).toEqual(q("1 vial"));
    const keeps = { ...long, "once opened": q("28 days") };
    expect(only(keeps)).toMatchObject({ dispense: q("2 vials"), onceOpened: q("28 days") });
    expect(asked({ ...keeps, dispense: q("1 vial") })).toContain("dispensed-too-little");
    expect(only({ ...long, "once opened": q("6 weeks") }).onceOpened).toEqual(q("42 days"));
  });

  test("what is written is held against it, in bottles", () => {
    const held = { ...drops, container: q("5 mL") };
    expect(asked({ ...held, dispense: q("2 bottles") })).toEqual([]);
    expect(asked({ ...held, dispense: q("4 bottles") })).toEqual(["dispensed-too-much"]);
    expect(asked({ ...held, dispense: q("0.5 bottle") })).toEqual(["give-not-measurable"]);
    for (const other of [q("5 mL"), q("1 tube"), q("1 vial"), q("20 drops"), q("2 tablets")])
      expect(asked({ ...held, dispense: other })).toEqual(["dispensed-in-other-unit"]);
    expect(asked({ name: "x", tablet: q("5 mg"), give: q("1 tablet"), dispense: q("1 bottle") })).toContain(
      "dispensed-in-other-unit",
    );
  });

  test("all bottles hold all drops, and one fewer would not", () => {
    const cases = fc.record({
      each: fc.integer({ min: 1, max: 4 }),
      every: fc.constantFrom("6 h", "8 h", "12 h", "24 h"),
      days: fc.integer({ min: 4, max: 28 }),
      both: fc.boolean(),
      perMl: fc.integer({ min: 15, max: 50 }),
      holds: fc.integer({ min: 25, max: 150 }).map((tenths) => new Decimal(tenths).div(10).toString()),
    });
    const property = fc.property(cases, ({ each, every, days, both, perMl, holds }) => {
      const written: Written = {
        ...drops,
        route: both ? "both ears" : "right ear",
        give: q(`${each} drops`),
        every,
        for: q(`${days} days`),
        "drops per mL": perMl,
        container: { value: holds, unit: "mL" },
      };
      const { dispense, doses } = only(written);
      const all = new Decimal(doses.length).times(each).times(both ? 2 : 1);
      const inOne = new Decimal(holds).times(perMl);
      expect(inOne.times(dispense.value).gte(all)).toBe(true);
      expect(inOne.times(Number(dispense.value) - 1).lt(all)).toBe(true);
    });
    fc.assert(property, { numRuns: Number(process.env["HEARTHSHEET_CASES"] ?? 200) });
  });
});

describe("slips of the pen", () => {
  const held = { ...drops, container: q("5 mL") };

  test("in what a bottle holds", () => {
    expect(asked(held)).toEqual([]);
    expect(asked({ ...held, container: q("50 mL") })).toEqual(["container-unlikely"]);
    expect(asked({ ...held, container: q("0.5 mL") })).toEqual(["container-unlikely"]);
    expect(asked({ ...held, container: q("5 g") })).toEqual(["container-in-other-unit"]);
    expect(asked({ name: "x", tablet: q("5 mg"), give: q("1 tablet"), container: q("5 mL") })).toContain(
      "container-in-other-unit",
    );
    expect(asked({ ...held, give: q("4 drops"), route: "both ears", every: "6 h", container: q("2.5 mL") })).toContain(
      "containers-many",
    );
  });

  const sold: [string, Written, string[]][] = [
    ["drops", drops, ["2.5 mL", "5 mL", "10 mL", "15 mL", "20 mL"]],
    ["insulin", insulin, ["2.5 mL", "3 mL", "10 mL"]],
    ["an eye ointment", { name: "x", ointment: "1 %", route: "left eye", give: q("1 application") }, ["3.5 g", "5 g"]],
    ["an ear ointment", { name: "x", ointment: "1 %", route: "left ear", give: q("1 application") }, ["7.5 g", "30 g"]],
    ["a spray", { name: "x", spray: "1 %", route: "skin", give: q("1 spray") }, ["60 mL", "100 mL", "240 mL"]],
  ];
  test.each(sold)("in the size of %s, ten times either way", (_, written, sizes) => {
    for (const size of sizes) {
      const [value = "", unit = "mL"] = size.split(" ") as [string, "mL" | "g"];
      const container = (of: Decimal.Value) => ({ container: { value: new Decimal(of).toString(), unit } });
      expect(asked({ ...written, ...container(value) })).not.toContain("container-unlikely");
      for (const slip of [10, 0.1])
        expect(asked({ ...written, ...container(new Decimal(value).times(slip)) })).toContain("container-unlikely");
    }
  });

  test("in the drops of a millilitre", () => {
    expect(asked({ ...held, "drops per mL": 40 })).toEqual([]);
    for (const perMl of [2, 200]) expect(asked({ ...held, "drops per mL": perMl })).toContain("drops-unlikely");
    expect(asked({ ...insulin, "drops per mL": 20 })).toContain("drops-unlikely");
  });

  test("in how long it keeps", () => {
    expect(asked({ ...held, "once opened": q("28 days") })).toEqual([]);
    expect(asked({ ...held, "once opened": q("280 days") })).toEqual(["opened-very-long"]);
    expect(asked({ ...held, "once opened": q("2.8 days") })).toEqual(["days-not-whole"]);
    const mixed: Written = { name: "x", liquid: q("50 mg/mL"), give: q("1 mL"), "once opened": q("10 days") };
    expect(asked(mixed)).not.toContain("opened-too-short");
    expect(asked({ ...mixed, for: q("14 days") })).toContain("opened-too-short");
  });
});

describe("the day of the last dose", () => {
  const tablets: Written = { name: "x", tablet: q("50 mg"), give: q("1 tablet"), dose: q("50 mg"), every: "24 h" };

  test("is held against the days", () => {
    const last = only({ ...tablets, for: q("10 days") }).last?.slice(0, 10) ?? "";
    expect(asked({ ...tablets, for: q("10 days"), until: last })).toEqual([]);
    expect(asked({ ...tablets, for: q("9 days"), until: last })).toEqual(["days-and-until-differ"]);
    expect(asked({ ...tablets, for: q("1 day"), until: last })).toContain("days-and-until-differ");
  });

  test("or how much goes home bears the days out; a rule of the table does; else they are asked about", () => {
    expect(asked({ ...tablets, for: q("7 days") })).toEqual([]);
    for (const days of [1, 2, 3, 10, 20, 30]) {
      const ordered = { ...tablets, for: q(`${days} days`) };
      expect(asked(ordered)).toEqual(["days-not-borne-out"]);
      expect(asked({ ...ordered, dispense: q(`${days} tablets`) })).toEqual([]);
    }
  });
});
