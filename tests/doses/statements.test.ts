/** Which statements of a medicine are told, with what; and which go unsaid beside another. Rows made up for it. */
import { describe, expect, test } from "vitest";
import type { Asked } from "#compute/doses/asked.js";
import { withoutNeedless } from "#compute/doses/needless.js";
import { statementsOf } from "#compute/doses/statements.js";
import type { Medicine } from "#compute/facts.js";
import type { MedicineRow } from "#tables/medicines.js";
import { q } from "./help.js";

type Said = MedicineRow["statements"];
const from = { file: "plan", line: 7, column: 1, length: 1 };
const idsOf = (said: Partial<Said[number]>[], planned: object = {}, species = "dog", sex = "female") => {
  const asked = { planned, species, sex, id: "x", at: () => from } as unknown as Asked;
  return statementsOf(asked, { kind: "tablet" } as never, said as Said);
};

describe("a statement of a medicine", () => {
  test("is told where its form, its animal and its sex are these, or none is named", () => {
    const ids = idsOf([
      { id: "all" },
      { id: "tablet", forms: ["tablet"] as never },
      { id: "liquid", forms: ["liquid"] as never },
      { id: "dog", species: ["dog"] as never },
      { id: "cat", species: ["cat"] as never },
      { id: "female", sexes: ["female"] as never },
      { id: "male", sexes: ["male"] as never },
    ]).map(({ id }) => id);
    expect(ids).toEqual(["all", "tablet", "dog", "female"]);
    expect(idsOf([{ id: "all" }])).toEqual([{ id: "all", topics: ["x"], values: {}, from }]);
  });

  test("of a missed dose goes unsaid where the clinician says what to do", () => {
    const missed = [{ id: "all.missed-dose" }, { id: "all" }];
    expect(idsOf(missed).map(({ id }) => id)).toEqual(["all.missed-dose", "all"]);
    expect(idsOf(missed, { missed: "Leave it out." }).map(({ id }) => id)).toEqual(["all"]);
  });

  test("of an insulin syringe names the syringe, and no other does", () => {
    const valuesFor = (id: string, syringe: unknown) => idsOf([{ id }], { syringe })[0]?.values;
    expect(valuesFor("insulin.syringe", "U-100")).toEqual({ syringe: "U-100" });
    expect(valuesFor("insulin.syringe", q("0.5 mL"))).toEqual({ syringe: "0.5 mL" });
    expect(valuesFor("insulin.syringe", undefined)).toEqual({});
    expect(valuesFor("all", "U-100")).toEqual({});
  });
});

test("what one medicine says makes the weaker words of any of them needless, and nothing else", () => {
  const medicine = (...ids: string[]) =>
    ({ name: ids.join(), statements: ids.map((id) => ({ id })) }) as unknown as Medicine;
  const rows = [
    { statements: [{ id: "strong", needless: ["weak"] }] },
    {
      statements: [
        { id: "unsaid", needless: ["kept"] },
        { id: "weak", needless: [] },
      ],
    },
  ] as unknown as MedicineRow[];
  const left = (...all: Medicine[]) =>
    withoutNeedless(all, rows).map(({ statements }) => statements.map(({ id }) => id));
  expect(left(medicine("strong", "kept"), medicine("weak", "kept"))).toEqual([["strong", "kept"], ["kept"]]);
  expect(left(medicine("weak", "kept"))).toEqual([["weak", "kept"]]);
});
