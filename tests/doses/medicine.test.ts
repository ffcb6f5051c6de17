/** What is said of a medicine beside its doses, and when it ends. The dog goes home at 16:30 on 2026-03-02. */
import { describe, expect, test } from "vitest";
import { only, q, told, type Written } from "./help.js";

const tablets: Written = { name: "x", tablet: q("5 mg"), give: q("1 tablet"), "last given": "08:00" };
const carprofen: Written = { ...tablets, name: "carprofen", tablet: q("100 mg"), every: "24 h" };

test("it begins with its first dose at home and ends with its last", () => {
  expect(only(tablets)).toMatchObject({ first: "2026-03-02T20:00", last: "2026-03-09T08:00" });
});

describe("what it is", () => {
  test("is its row of the table, by the name that is one medicine's alone", () => {
    expect(only(carprofen)).toMatchObject({
      id: "carprofen",
      name: "carprofen",
      substance: "carprofen",
      called: "carprofen",
      group: "nsaid",
    });
    const both: Written = { ...tablets, name: "Tramadol with paracetamol", tablet: q("50 mg") };
    expect(only(both)).toMatchObject({ substance: "paracetamol", called: null });
  });

  test("is only its name where the table does not hold it", () => {
    expect(only({ ...tablets, name: "Moonflower" })).toMatchObject({
      id: "moonflower",
      name: "Moonflower",
      substance: null,
      called: null,
      group: null,
      food: null,
    });
  });
});

describe("what the clinician says", () => {
  test("of food stands before what the table says", () => {
    expect(only(carprofen).food).toBe("with");
    expect(only({ ...carprofen, food: "without" }).food).toBe("without");
  });

  test("of its purpose and of a missed dose is in the language of the clinic, unless the plan says in which", () => {
    expect(only(tablets)).toMatchObject({ purpose: null, missed: null });
    expect(only({ ...tablets, why: "for the itch", missed: "leave it out" })).toMatchObject({
      purpose: { en: "for the itch" },
      missed: { en: "leave it out" },
    });
    expect(only({ ...tablets, why: { es: "para el picor" } }).purpose).toEqual({ es: "para el picor" });
  });

  test("of when it expires and how long an opened one keeps is told on", () => {
    expect(only(tablets)).toMatchObject({ expires: null, onceOpened: null, holds: null });
    const liquid: Written = { name: "x", liquid: q("50 mg/mL"), give: q("1 mL"), expires: "2026-12-31" };
    expect(only({ ...liquid, "once opened": q("2 weeks") })).toMatchObject({
      expires: "2026-12-31",
      onceOpened: q("14 days"),
    });
  });
});

describe("its label", () => {
  test("carries what of all that is said tells how it is kept and handled", () => {
    const patch: Written = { name: "fentanyl", patch: "25 mcg/h", route: "skin", give: q("1 patch"), every: "72 h" };
    const { statements, cautions } = only(patch);
    const all = statements.map(({ id }) => id);
    const label = cautions.map(({ id }) => id);
    expect(label.length).toBeGreaterThan(0);
    expect(label.length).toBeLessThan(all.length);
    expect(all).toEqual(expect.arrayContaining(label));
  });
});

// Given at 08:00, so first at home at 20:00 that day: 14 doses end on the morning of the 9th.
describe("the day it ends", () => {
  const last = { day: "2026-03-09" };

  test("is not past the day it may be used", () => {
    expect(told("expires-before-end", { ...tablets, expires: "2026-03-09" })).toEqual([]);
    expect(told("expires-before-end", { ...tablets, expires: "2026-03-08" })).toEqual([
      { at: "0/expires", medicine: "x", last, expires: { day: "2026-03-08" } },
    ]);
  });

  test("is the day the plan says", () => {
    expect(told("days-and-until-differ", { ...tablets, until: "2026-03-09" })).toEqual([]);
    for (const day of ["2026-03-08", "2026-03-10"])
      expect(told("days-and-until-differ", { ...tablets, until: day })).toEqual([
        { at: "0/until", medicine: "x", last, until: { day } },
      ]);
  });

  // Seven days from the 2nd, and three more of a second step.
  test("is, of what is given as needed, the last day of its course", () => {
    const needed: Written = { ...tablets, "as needed": "at most 2 a day" };
    expect(only(needed)).toMatchObject({ first: null, last: null, lastGiven: null, doses: [] });
    expect(told("days-and-until-differ", { ...needed, until: "2026-03-09" })).toEqual([]);
    const next = [{ give: q("2 tablets"), every: "12 h", for: q("3 days") }];
    expect(told("days-and-until-differ", { ...needed, next, until: "2026-03-09" })).toMatchObject([
      { last: { day: "2026-03-12" } },
    ]);
  });
});
