import { describe, expect, it } from "vitest";
import { leftOf } from "../../src/compute/doses/left.js";
import { doses, planWith, q, type Written } from "./help.js";

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
  it("of tablets by the clock: what went home less what was due, or what was counted", () => {
    // 14 went home, for 08:00 and 20:00 from the 3rd to the 9th; five were due by noon of the 5th.
    expect(later(tablets)).toEqual({ dispense: q("9 tablets"), codes: [] });
    expect(later({ ...tablets, left: q("3 tablets") })).toEqual({
      dispense: q("3 tablets"),
      codes: ["medicine-runs-out"],
    });
  });

  it("of drops: the bottle, however many drops are to come, counted or not", () => {
    expect(later(drops)).toEqual({ dispense: q("1 bottle"), codes: [] });
    expect(later({ ...drops, left: q("1 bottle") })).toEqual({ dispense: q("1 bottle"), codes: [] });
    expect(later({ ...drops, left: q("3 mL") })).toEqual({ dispense: undefined, codes: ["dispensed-in-other-unit"] });
  });

  it("is doubted where it is more than went home, or ten times off what should be there", () => {
    const course = { ...tablets, for: q("21 days") } as Written;
    expect(later({ ...course, left: q("37 tablets") }).codes).toEqual([]);
    expect(later({ ...course, left: q("43 tablets") }).codes).toEqual(["left-not-believable"]);
    const more = { ...tablets, for: q("3 days"), dispense: q("14 tablets") } as Written;
    expect(later({ ...more, left: q("8 tablets") }).codes).toEqual([]);
    expect(later({ ...more, left: q("90 tablets") }).codes).toEqual(["left-not-believable"]);
  });

  it("of what is given as needed: what went home, until somebody counts", () => {
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

  it("steps that are over are told no more, and the one that runs is told from its next dose", () => {
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

  it("and the last dose of all alone", () => {
    const { steps } = goingOn({ ...tablets, for: q("3 days") }).value ?? expect.fail();
    expect(steps.map(({ first, last }) => [first, last])).toEqual([["2026-03-05T20:00", "2026-03-05T20:00"]]);
  });
});
