/** Drops, ointments, sprays and insulin go home in bottles, tubes and vials: how many, and what each of them holds. */
import { Decimal } from "decimal.js";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { codes, doses, only, q, told, type Written } from "./help.js";

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

describe("what is told of a bottle", () => {
  const held = { ...drops, container: q("5 mL") };
  const eye: Written = { name: "x", ointment: "1 %", route: "left eye", give: q("1 application") };
  const ear: Written = { ...eye, route: "left ear" };
  const spray: Written = { name: "x", spray: "1 %", route: "skin", give: q("1 spray") };

  test("where its size is not said: at the medicine, with what is needed, if anybody can reckon it", () => {
    expect(told("container-not-said", drops)).toEqual([
      { at: "0", medicine: "x", needed: "1.05 mL", context: "needed" },
    ]);
    expect(told("container-not-said", ear)).toEqual([{ at: "0", medicine: "x", needed: "", context: "" }]);
    expect(told("container-not-said", held)).toEqual([]);
  });

  test("where its size is in another unit, or it has none", () => {
    expect(told("container-in-other-unit", { ...drops, container: q("5 g") })).toEqual([
      { at: "0/container", medicine: "x", given: "5 g" },
    ]);
    const tablets: Written = { name: "x", tablet: q("5 mg"), give: q("1 tablet"), container: q("5 mL") };
    expect(told("container-in-other-unit", tablets)).toEqual([{ at: "0/container", medicine: "x", given: "5 mL" }]);
  });

  test.each<[string, Written, [string, string], [string, string], "mL" | "g"]>([
    ["drops", drops, ["2.4", "2.5"], ["20", "20.1"], "mL"],
    ["insulin", insulin, ["2.4", "2.5"], ["20", "20.1"], "mL"],
    ["a spray", spray, ["29", "30"], ["250", "251"], "mL"],
    ["an eye ointment", eye, ["1.4", "1.5"], ["10", "10.1"], "g"],
    ["an ear ointment", ear, ["6.9", "7"], ["60", "60.1"], "g"],
  ])("where its size is unlikely: %s", (_, written, [below, least], [most, above], unit) => {
    const of = (value: string) => told("container-unlikely", { ...written, container: { value, unit } });
    for (const value of [below, above])
      expect(of(value)).toEqual([
        {
          at: "0/container",
          medicine: written.name,
          given: `${value} ${unit}`,
          least: Number(least),
          most: Number(most),
        },
      ]);
    expect([...of(least), ...of(most)]).toEqual([]);
  });

  // Three drops into both eyes, six times a day for a week, are 252 drops: 12.6 mL, in bottles of 2.5 mL six.
  test("where there are more than three of it, by what they hold or by how long they keep", () => {
    const many: Written = { ...drops, give: q("3 drops"), route: "both eyes", every: "4 h", container: q("2.5 mL") };
    expect(told("containers-many", many)).toEqual([{ at: "0/container", medicine: "x", needed: "6 bottle", most: 3 }]);
    const vials: Written = { ...insulin, give: q("1 unit"), for: q("28 days"), "once opened": q("7 days") };
    expect(told("containers-many", vials)).toEqual([
      { at: "0/once opened", medicine: "insulin", needed: "4 vial", most: 3 },
    ]);
    expect(told("containers-many", { ...vials, for: q("21 days") })).toEqual([]);
  });

  test("where it makes too few or too many drops of a millilitre, or is none that drips", () => {
    const unlikely = (perMl: number) => told("drops-unlikely", { ...held, "drops per mL": perMl });
    for (const perMl of [9, 61])
      expect(unlikely(perMl)).toEqual([{ at: "0/drops per mL", medicine: "x", drops: perMl, least: 10, most: 60 }]);
    expect([...unlikely(10), ...unlikely(60)]).toEqual([]);
    expect(told("drops-unlikely", { ...insulin, "drops per mL": 20 })).toMatchObject([{ drops: 20 }]);
  });

  test("where an opened one keeps very long, or for no number of days", () => {
    expect(told("opened-very-long", { ...held, "once opened": q("60 days") })).toEqual([]);
    expect(told("opened-very-long", { ...held, "once opened": q("61 days") })).toEqual([
      { at: "0/once opened", medicine: "x", days: 61, most: 60 },
    ]);
    expect(told("days-not-whole", { ...held, "once opened": q("0.5 weeks") })).toEqual([
      { at: "0/once opened", medicine: "x", days: "3.5" },
    ]);
    const both = { ...held, "once opened": q("61 days"), container: q("50 mL") };
    expect(asked(both)).toEqual(["opened-very-long", "container-unlikely"]);
  });

  test("where what is mixed keeps shorter than its course", () => {
    const mixed: Written = { name: "x", liquid: q("50 mg/mL"), give: q("1 mL"), "once opened": q("10 days") };
    expect(told("opened-too-short", { ...mixed, for: q("10 days") })).toEqual([]);
    expect(told("opened-too-short", { ...mixed, for: q("11 days") })).toEqual([
      { at: "0/once opened", medicine: "x", open: 10, days: 11 },
    ]);
    expect(told("opened-too-short", { ...held, "once opened": q("3 days") })).toEqual([]);
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
