/** How much goes home, and what is told of what is written of it. A tablet twelve-hourly for seven days is 14 tablets. */
import { describe, expect, test } from "vitest";
import { codes, only, q, told, type Written } from "./help.js";

const tablets: Written = { name: "x", tablet: q("5 mg"), splits: "halves", give: q("1 tablet") };
const liquid: Written = { name: "x", liquid: q("50 mg/mL"), give: q("0.3 mL") };
const drops: Written = { name: "x", drops: "0.3 %", route: "left eye", give: q("1 drop"), container: q("5 mL") };
const about = (written: Written) => codes([written]).filter((code) => /dispensed|measurable/.test(code));

describe("what is written goes home", () => {
  test("where it is as much as is needed, or more", () => {
    expect(only({ ...tablets, dispense: q("14 tablets") })).toMatchObject({
      dispense: q("14 tablets"),
      leftOver: q("0 tablets"),
    });
    expect(only({ ...tablets, dispense: q("20.5 tablets") })).toMatchObject({
      dispense: q("20.5 tablets"),
      leftOver: q("6.5 tablets"),
    });
  });

  test("of a liquid by any measure", () => {
    expect(only({ ...liquid, dispense: q("15.25 mL") })).toMatchObject({
      dispense: q("15.25 mL"),
      leftOver: q("11.05 mL"),
    });
  });
});

describe("too little of it", () => {
  test("is told with how much is needed", () => {
    expect(told("dispensed-too-little", { ...tablets, dispense: q("13.5 tablets") })).toEqual([
      { at: "0/dispense", medicine: "x", given: "13.5 tablet", needed: "14 tablet", context: "" },
    ]);
  });
});

describe("too much of it", () => {
  test("is asked about from three times what is needed", () => {
    expect(about({ ...tablets, dispense: q("41 tablets") })).toEqual([]);
    expect(told("dispensed-too-much", { ...tablets, dispense: q("42 tablets") })).toEqual([
      { at: "0/dispense", medicine: "x", given: "42 tablet", needed: "14 tablet" },
    ]);
  });

  // 14 x 0.3 mL = 4.2 mL
  test("of a liquid, which goes home in the bottle it comes in, from ten times", () => {
    expect(about({ ...liquid, dispense: q("41.9 mL") })).toEqual([]);
    expect(told("dispensed-too-much", { ...liquid, dispense: q("42 mL") })).toEqual([
      { at: "0/dispense", medicine: "x", given: "42 mL", needed: "4.2 mL" },
    ]);
  });
});

describe("what cannot go home like that", () => {
  test("is told with what it comes in", () => {
    expect(told("dispensed-in-other-unit", { ...tablets, dispense: q("20 mL") })).toEqual([
      { at: "0/dispense", medicine: "x", given: "20 mL", unit: "tablet", context: "tablet" },
    ]);
    expect(told("dispensed-in-other-unit", { ...drops, dispense: q("5 mL") })).toEqual([
      { at: "0/dispense", medicine: "x", given: "5 mL", unit: "bottle", context: "container" },
    ]);
  });

  test("is told with the smallest part of it", () => {
    expect(told("give-not-measurable", { ...tablets, dispense: q("14.25 tablets") })).toEqual([
      { at: "0/dispense", medicine: "x", given: "14.25 tablet", step: "0.5 tablet" },
    ]);
    expect(told("give-not-measurable", { ...drops, dispense: q("1.5 bottles") })).toEqual([
      { at: "0/dispense", medicine: "x", given: "1.5 bottle", step: "1 bottle" },
    ]);
  });

  test("is not counted in bottles that keep for no number of days", () => {
    const unkept: Written = { ...drops, "once opened": q("0.5 days"), dispense: q("1 bottle") };
    expect(told("days-not-whole", unkept)).toEqual([{ at: "0/once opened", medicine: "x", days: "0.5" }]);
    expect(about(unkept)).toEqual([]);
  });
});
