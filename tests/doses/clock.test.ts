import { describe, expect, test } from "vitest";
import { codes, doses, only, q, type Setting, type Written } from "./help.js";

const tablet = { tablet: q("100 mg"), give: q("1 tablet") };
const times = (medicine: Partial<Written>, setting: Setting = {}) =>
  only({ name: "something", ...tablet, ...medicine }, setting).doses.map(({ at, part }) => `${at.slice(5)} ${part}`);
const first = (medicine: Partial<Written>, setting: Setting = {}) => times(medicine, setting)[0];

describe("the first dose at home", () => {
  test("is the household time nearest to one interval after the clinic's", () => {
    expect(first({ "last given": "07:30" })).toBe("03-02T20:00 evening");
    expect(first({ "last given": "16:00" })).toBe("03-03T08:00 morning");
  });

  test("of one a day is morning or evening, whichever is nearer", () => {
    expect(first({ every: "24 h", "last given": "09:00" })).toBe("03-03T08:00 morning");
    expect(first({ every: "24 h", "last given": "16:00" })).toBe("03-03T20:00 evening");
    expect(first({ every: "every morning", "last given": "16:00" })).toBe("03-04T08:00 morning");
  });

  test("is asked about where it comes more than half an interval late", () => {
    expect(codes([{ name: "carprofen", ...tablet, "last given": "11:30" }])).toContain("first-dose-late");
    expect(codes([{ name: "carprofen", ...tablet, "last given": "11:00" }])).not.toContain("first-dose-late");
  });

  test("follows from a dose given the day before, and never lies before discharge", () => {
    expect(first({ "last given": "2026-03-01T20:00" })).toBe("03-02T20:00 evening");
  });

  test("of a medicine the clinic has not given is the next household time", () => {
    expect(first({ "last given": "not given" })).toBe("03-02T20:00 evening");
    expect(first({ "last given": "not given" }, { discharged: "2026-03-02T20:30" })).toBe("03-03T08:00 morning");
  });

  test("is as the plan says, and the doses after it find back to the household's times", () => {
    expect(times({ first: "22:00", "last given": "09:30", for: q("2 days") })).toEqual([
      "03-02T22:00 bedtime",
      "03-03T08:00 morning",
      "03-03T20:00 evening",
      "03-04T08:00 morning",
    ]);
  });

  test("written as a time that is past today is tomorrow's", () => {
    expect(first({ first: "07:00", "last given": "not given" })).toBe("03-03T07:00 morning");
  });

  test("without a last dose, after discharge, or too soon, is told", () => {
    const { "last given": _, ...unsaid } = { name: "x", ...tablet, "last given": undefined };
    expect(codes([{ ...unsaid, "last given": undefined } as Written])).toContain("last-given-missing");
    expect(codes([{ name: "x", ...tablet, "last given": "18:00" }])).toContain("last-given-after-discharge");
    expect(codes([{ name: "x", ...tablet, first: "2026-03-02T15:00" }])).toContain("first-before-discharge");
    expect(codes([{ name: "x", ...tablet, first: "20:00" }])).toContain("doses-too-close");
  });
});

describe("times of day", () => {
  test("every 8 h is shared over the waking day, three times a day ends with the evening", () => {
    const eight = times(
      { every: "8 h", "last given": "not given", for: q("1 day") },
      { discharged: "2026-03-02T07:00" },
    );
    expect(eight).toEqual(["03-02T08:00 morning", "03-02T15:30 midday", "03-02T23:00 bedtime"]);
    const three = times(
      { every: "3 times a day", "last given": "not given", for: q("1 day") },
      { discharged: "2026-03-02T07:00" },
    );
    expect(three).toEqual(["03-02T08:00 morning", "03-02T14:00 midday", "03-02T20:00 evening"]);
  });

  test("every 6 h goes through the night", () => {
    const six = times({ every: "6 h", "last given": "not given", for: q("1 day") }, { discharged: "2026-03-02T07:00" });
    expect(six.map((time) => time.slice(6, 11))).toEqual(["08:00", "14:00", "20:00", "02:00"]);
  });

  test("every other day keeps its time", () => {
    const other = times({ every: "every other day", for: q("7 days"), "last given": "08:00" });
    expect(other).toEqual(["03-04T08:00 morning", "03-06T08:00 morning", "03-08T08:00 morning", "03-10T08:00 morning"]);
  });

  test("of the plan's household stand before the clinic's usual ones", () => {
    expect(first({ "last given": "07:30" }, { household: { morning: "07:00", evening: "19:00" } })).toBe(
      "03-02T19:00 evening",
    );
  });

  test("too uneven for two a day are asked about, and the doses set evenly", () => {
    const household = { morning: "06:00", evening: "22:30" };
    expect(codes([{ name: "x", ...tablet }], { household })).toContain("household-times-uneven");
    const [one = "", two = ""] = times({ "last given": "not given" }, { household, discharged: "2026-03-02T05:00" });
    expect([one.slice(6, 11), two.slice(6, 11)]).toEqual(["06:00", "18:00"]);
  });
});

// Clocks go forward on 2026-03-08 in Chicago and on 2026-03-29 in Madrid, and back on 2026-11-01 and 2026-10-25 (IANA).
describe.each([
  ["America/Chicago", "2026-03-07T16:30"],
  ["America/Chicago", "2026-10-31T16:30"],
  ["Europe/Madrid", "2026-03-28T16:30"],
  ["Europe/Madrid", "2026-10-24T16:30"],
])("over a clock change in %s on %s", (zone, discharged) => {
  test("eight o'clock stays eight o'clock", () => {
    const clocks = times({ "last given": "not given", for: q("4 days") }, { zone, discharged }).map((time) =>
      time.slice(6, 11),
    );
    expect(new Set(clocks)).toEqual(new Set(["08:00", "20:00"]));
    expect(clocks).toHaveLength(8);
  });
});

test("a night dose in the skipped hour is given when the clocks have moved on", () => {
  const night = times(
    { every: "6 h", "last given": "not given", for: q("1 day") },
    { discharged: "2026-03-07T19:00", household: { morning: "08:30", evening: "20:30" } },
  );
  expect(night).toEqual(["03-07T20:30 evening", "03-08T03:30 bedtime", "03-08T08:30 morning", "03-08T14:30 midday"]);
});

test("clocks that go forward give no dose a time of day of its own: four a day stay four columns of the chart", () => {
  const { value } = doses(
    [{ name: "something", ...tablet, every: "6 h", "last given": "not given", for: q("3 days") }],
    { discharged: "2026-03-06T19:00" },
  );
  expect(value?.medicines[0]?.steps[0]?.times.map(({ at }) => at)).toEqual(["02:00", "08:00", "14:00", "20:00"]);
  expect(value?.chart?.columns.map(({ at }) => at)).toEqual(["02:00", "08:00", "14:00", "20:00"]);
  const [moved] = value?.chart?.rows.find(({ day }) => day === "2026-03-08")?.cells ?? [];
  expect(moved).toMatchObject({ at: "2026-03-08T03:00", slot: "02:00" });
});
