import { describe, expect, test } from "vitest";
import { leftOf } from "../../src/compute/doses/left.js";
import { codes, doses, only, planWith, q, told, type Written } from "./help.js";

const now = "2026-03-05T12:00";

/** What an earlier paper began, told anew three days later. */
function goingOn(written: Written) {
  const started = { ...written, started: "2026-03-02T20:00" };
  const [medicine] = doses([started]).value?.medicines ?? [];
  const planned = planWith([started]).medicines[0];
  if (!medicine || !planned) throw new Error(JSON.stringify(doses([started]).problems));
  const at = () => ({ file: "plan.yaml", line: 1, column: 1, length: 1 });
  return leftOf(medicine, { planned, at } as unknown as Parameters<typeof leftOf>[1], now);
}

/** Of that: what goes home, and what is asked. */
function later(written: Written) {
  const { value, problems } = goingOn(written);
  return { dispense: value?.dispense, codes: problems.map(({ code }) => code) };
}

const tablets: Written = { name: "carprofen", tablet: q("100 mg"), give: q("1 tablet") };
const drops: Written = { name: "ofloxacin", drops: "0.3 %", give: q("1 drop"), route: "left eye" as never };

describe("what is in the house at a revision", () => {
  test("of tablets by the clock: what went home less what was due, or what was counted", () => {
    // 14 went home, for 08:00 and 20:00 from the 3rd to the 9th; five were due by noon of the 5th.
    expect(later(tablets)).toEqual({ dispense: q("9 tablets"), codes: [] });
    expect(later({ ...tablets, left: q("3 tablets") })).toEqual({
      dispense: q("3 tablets"),
      codes: ["medicine-runs-out"],
    });
  });

  test("of drops: the bottle, however many drops are to come, counted or not", () => {
    expect(later(drops)).toEqual({ dispense: q("1 bottle"), codes: [] });
    expect(later({ ...drops, left: q("1 bottle") })).toEqual({ dispense: q("1 bottle"), codes: [] });
    expect(later({ ...drops, left: q("3 mL") })).toEqual({ dispense: undefined, codes: ["dispensed-in-other-unit"] });
  });

  test("is doubted where it is more than went home, or ten times off what should be there", () => {
    const course = { ...tablets, for: q("21 days") } as Written;
    expect(later({ ...course, left: q("37 tablets") }).codes).toEqual([]);
    expect(later({ ...course, left: q("43 tablets") }).codes).toEqual(["left-not-believable"]);
    const more = { ...tablets, for: q("3 days"), dispense: q("14 tablets") } as Written;
    expect(later({ ...more, left: q("8 tablets") }).codes).toEqual([]);
    expect(later({ ...more, left: q("90 tablets") }).codes).toEqual(["left-not-believable"]);
  });

  test("of what is given as needed: what went home, until somebody counts", () => {
    const asNeeded: Written = { ...tablets, "as needed": "at most 2 a day" };
    expect(later(asNeeded).dispense).toEqual(doses([asNeeded]).value?.medicines[0]?.dispense);
    expect(later({ ...asNeeded, left: q("2 tablets") })).toEqual({ dispense: q("2 tablets"), codes: [] });
  });
});

describe("what is told of a course that goes on", () => {
  const taper: Written = {
    ...tablets,
    for: q("2 days"),
    next: [
      { give: q("0.5 tablet"), every: "24 h", for: q("3 days") },
      { give: q("0.5 tablet"), every: "48 h", for: q("4 days") },
    ] as never,
    splits: "halves",
  };

  test("steps that are over are told no more, and the one that runs is told from its next dose", () => {
    const whole = doses([{ ...taper, started: "2026-03-02T20:00" }]).value?.medicines[0] ?? expect.fail();
    const spans = (steps: typeof whole.steps) => steps.map(({ first, last }) => `${first} - ${last}`);
    // Worked by hand: four doses from the 3rd to the 4th, then one each morning of the 5th to the 7th, then every other.
    expect(spans(whole.steps)).toEqual([
      "2026-03-03T08:00 - 2026-03-04T20:00",
      "2026-03-05T08:00 - 2026-03-07T08:00",
      "2026-03-08T08:00 - 2026-03-10T08:00",
    ]);
    const left = goingOn(taper).value ?? expect.fail();
    expect(spans(left.steps)).toEqual(["2026-03-06T08:00 - 2026-03-07T08:00", "2026-03-08T08:00 - 2026-03-10T08:00"]);
    expect([whole.goesOn, left.goesOn]).toEqual([false, true]);
  });

  test("and the last dose of all alone", () => {
    const { steps } = goingOn({ ...tablets, for: q("3 days") }).value ?? expect.fail();
    expect(steps.map(({ first, last }) => [first, last])).toEqual([["2026-03-05T20:00", "2026-03-05T20:00"]]);
  });
});

/** Told anew at a time. Twelve-hourly for a week from 08:00 on the 3rd; a course of three days ends at 20:00 on the 5th. */
const at = (discharged: string) => ({ discharged });
const began: Written = { ...tablets, started: "2026-03-02T16:30" };
const short: Written = { ...began, for: q("3 days") };
const needed: Written = { ...began, "as needed": "at most 2 a day" };
const runsOn = { discharged: now };

describe("a medicine at a revision", () => {
  test("that this paper begins is left as it is", () => {
    const begun = { lastGiven: "2026-03-02T16:00", first: "2026-03-03T08:00", dispense: q("14 tablets") };
    expect(only(tablets)).toMatchObject(begun);
    expect(only(began)).toMatchObject(begun);
  });

  test("goes on with the next dose, under its own number; one due as the paper is written has been given", () => {
    const at8 = only(began, at("2026-03-05T08:00"));
    expect(at8).toMatchObject({ lastGiven: null, first: "2026-03-05T20:00", dispense: q("9 tablets") });
    expect([at8.doses.length, at8.doses[0]?.number]).toEqual([9, 6]);
    expect(only(began, at("2026-03-05T07:59"))).toMatchObject({
      first: "2026-03-05T08:00",
      dispense: q("10 tablets"),
    });
  });

  test("is told no more once its last dose has been given, unless it is given as needed", () => {
    const of = (written: Written, discharged: string) =>
      doses([written], { discharged }).value?.medicines.map(({ name }) => name);
    expect(of(short, "2026-03-05T19:59")).toEqual(["carprofen"]);
    expect(of(short, "2026-03-05T20:00")).toEqual([]);
    expect(of({ ...short, "as needed": "at most 2 a day" }, "2026-03-05T20:00")).toEqual(["carprofen"]);
  });

  // Six of 14 tablets are due by the evening of the 5th; five of them by noon.
  test("keeps what is over after its last dose", () => {
    const more: Written = { ...short, dispense: q("14 tablets") };
    expect(only(more, runsOn)).toMatchObject({ dispense: q("9 tablets"), leftOver: q("8 tablets") });
    expect(only({ ...more, left: q("8 tablets") }, runsOn)).toMatchObject({
      dispense: q("8 tablets"),
      leftOver: q("7 tablets"),
    });
    expect(only({ ...began, left: q("3 tablets") }, runsOn)).toMatchObject({ leftOver: q("0 tablets") });
  });
});

describe("what was counted", () => {
  const doubts = (written: Written, discharged = now) => told("left-not-believable", written, { discharged });

  test("in another unit is told with what it comes in", () => {
    expect(told("dispensed-in-other-unit", { ...began, left: q("3 mL") }, runsOn)).toEqual([
      { at: "0/left", medicine: "carprofen", given: "3 mL", unit: "tablet", context: "tablet" },
    ]);
    const bottle: Written = { ...drops, started: "2026-03-02T16:30", left: q("3 mL") };
    expect(told("dispensed-in-other-unit", bottle, runsOn)).toEqual([
      { at: "0/left", medicine: "ofloxacin", given: "3 mL", unit: "bottle", context: "container" },
    ]);
  });

  test("that runs out is told with what is still to be given", () => {
    expect(told("medicine-runs-out", { ...began, left: q("8.5 tablets") }, runsOn)).toEqual([
      { at: "0/left", medicine: "carprofen", left: "8.5 tablet", needed: "9 tablet" },
    ]);
    expect(told("medicine-runs-out", { ...began, left: q("9 tablets") }, runsOn)).toEqual([]);
  });

  test("and is more than went home is told with what should be there, or went home", () => {
    expect(doubts({ ...began, left: q("14 tablets") })).toEqual([]);
    expect(doubts({ ...began, left: q("15 tablets") })).toEqual([
      { at: "0/left", medicine: "carprofen", left: "15 tablet", expected: "9 tablet" },
    ]);
    expect(doubts({ ...needed, left: q("14 tablets") })).toEqual([]);
    expect(doubts({ ...needed, left: q("15 tablets") })).toEqual([
      { at: "0/left", medicine: "carprofen", left: "15 tablet", expected: "14 tablet" },
    ]);
    expect(doubts({ ...drops, started: "2026-03-02T16:30", left: q("2 bottles") })).toMatchObject([
      { left: "2 bottle", expected: "1 bottle" },
    ]);
  });

  // By noon of the 9th only the dose of the evening is to come.
  test("is doubted from ten times what should be there", () => {
    expect(doubts({ ...began, left: q("9 tablets") }, "2026-03-09T12:00")).toEqual([]);
    expect(doubts({ ...began, left: q("10 tablets") }, "2026-03-09T12:00")).toMatchObject([
      { left: "10 tablet", expected: "1 tablet" },
    ]);
  });

  // By noon of the 5th one dose of the short course is to come: of 15 tablets ten should be there, of 14 nine.
  test("is doubted down from a tenth of what should be there", () => {
    const left = { ...short, left: q("1 tablet") };
    expect(doubts({ ...left, dispense: q("14 tablets") })).toEqual([]);
    expect(doubts({ ...left, dispense: q("15 tablets") })).toMatchObject([{ left: "1 tablet", expected: "10 tablet" }]);
  });

  test("is not doubted where nothing should be there: a dose was missed", () => {
    const over = { ...short, left: q("1 tablet") };
    expect(codes([over], at("2026-03-05T21:00"))).not.toContain("left-not-believable");
    expect(doses([over], at("2026-03-05T21:00")).value?.medicines).toEqual([]);
  });
});
