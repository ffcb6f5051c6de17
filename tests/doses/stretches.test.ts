/** The steps of a course as they are told in words: how often, from when to when, and at which times of day. */
import { describe, expect, test } from "vitest";
import { only, q, type Written } from "./help.js";

const tablets: Written = { name: "x", tablet: q("5 mg"), give: q("1 tablet"), "last given": "08:00" };
const steps = (written: Partial<Written>) => only({ ...tablets, ...written }).steps;
const clocks = (written: Partial<Written>) => steps(written)[0]?.times.map(({ at, part }) => `${at} ${part}`);

test("each has its amount, its days, its doses and its place", () => {
  const next = [
    { give: q("2 tablets"), every: "24 h", for: q("3 days") },
    { give: q("1 tablet"), every: "every other day", for: q("4 days") },
  ];
  const told = steps({ give: q("3 tablets"), for: q("2 days"), next }).map(({ from: _, times: __, ...rest }) => rest);
  expect(told).toEqual([
    {
      give: q("3 tablets"),
      everyHours: 12,
      often: "times-a-day",
      days: 2,
      first: "2026-03-02T20:00",
      last: "2026-03-04T08:00",
    },
    {
      give: q("2 tablets"),
      everyHours: 24,
      often: "daily",
      days: 3,
      first: "2026-03-04T20:00",
      last: "2026-03-06T20:00",
    },
    {
      give: q("1 tablet"),
      everyHours: 48,
      often: "every-few-days",
      days: 4,
      first: "2026-03-07T20:00",
      last: "2026-03-09T20:00",
    },
  ]);
});

test("what is given as needed has no times, first or last", () => {
  expect(steps({ "as needed": "at most 2 a day" })).toMatchObject([{ times: [], first: null, last: null, days: 7 }]);
});

describe("the times of day", () => {
  test("are told once each, in the order of the clock", () => {
    expect(clocks({})).toEqual(["08:00 morning", "20:00 evening"]);
    expect(clocks({ every: "24 h", for: q("1 day") })).toEqual(["08:00 morning"]);
    expect(clocks({ every: "every other day", for: q("1 day") })).toEqual(["08:00 morning"]);
  });

  test("are those that come again: a first dose at a time of its own is told apart", () => {
    expect(clocks({ first: "22:00" })).toEqual(["08:00 morning", "20:00 evening"]);
    expect(clocks({ first: "22:00", every: "24 h", for: q("2 days") })).toEqual(["20:00 evening"]);
  });

  test("are all of them where none comes again", () => {
    expect(clocks({ first: "22:00", for: q("1 day") })).toEqual(["08:00 morning", "22:00 bedtime"]);
    expect(clocks({ first: "22:00", every: "24 h", for: q("1 day") })).toEqual(["22:00 bedtime"]);
    expect(clocks({ first: "22:00", every: "every other day", for: q("1 day") })).toEqual(["22:00 bedtime"]);
  });
});
