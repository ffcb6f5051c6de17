import { describe, expect, test } from "vitest";
import { courseOf, run } from "./help.js";

// Discharged on Monday 2 March, so that day 12 is the 14th.
describe("a decision that names no day may fall on any day until the last visit of its care", () => {
  const latest = (course: string[][]) =>
    courseOf({ course }).visits.find(({ purposes }) => purposes.some(({ kind }) => kind === "recheck"))?.latest;

  test.each([
    [["change every 2-3 days 4 times"], "2026-03-14"],
    [["change every 2 days for 3-5 days"], "2026-03-07"],
    [["change every 2 days for 5 days, first day 3-4"], "2026-03-10"],
    [["change every 2 days until day 9-10"], "2026-03-12"],
    [["change every day for 3 days", "then every 2-3 days 3 times"], "2026-03-14"],
    [["sutures out day 10-14"], "2026-03-16"],
  ])("%j", (lines, day) => {
    expect(latest([[...lines, "maybe recheck"]])).toBe(day);
  });

  test.each([
    ["the changes end on the day before the drain of another care", ["drain out day 5-8"], [], "2026-03-09"],
    ["the first of two visits ends them", ["drain out day 8"], ["closure day 5"], "2026-03-07"],
    ["a visit that may never be does not", ["drain out day 8"], ["maybe closure day 4"], "2026-03-09"],
  ])("%s", (_, drain, more, day) => {
    expect(latest([drain, ["change every 2 days until drain out", ...more, "maybe recheck"]])).toBe(day);
  });

  test("the visits of another care do not count", () => {
    const other = ["change every 2 days until day 14", "sutures out day 12"];
    expect(latest([other, ["drain out day 5", "maybe recheck"]])).toBe("2026-03-07");
  });
});

describe("an afternoon some days after the last change", () => {
  /** The owner cannot come on the afternoons of some days; the changes can be made in the morning. */
  const told = (course: string[], after: number, ...away: string[]) =>
    run({
      course: [...course, `recheck ${after} days after the last change, not before 14:00`],
      unavailable: away.map((day) => `${day} 12:00-20:00`),
    }).problems;
  const on = (day: string) => ({ day });

  test.each([
    ["day 3 is not 3 days after the change of day 6", ["change every 2 days for 6 days"], 3, ["2026-03-05"]],
    [
      "the drain comes out by day 5, so the last change is on day 2, 3 or 4",
      ["change every day until drain out", "drain out day 3-5", "closure day 8"],
      2,
      ["2026-03-08"],
    ],
    [
      "a closure on day 6 ends the changes before day 14",
      ["change every 2-3 days until day 14 or closure", "closure day 6"],
      2,
      ["2026-03-16", "2026-03-17", "2026-03-18"],
    ],
  ])("has a day: %s", (_, course, after, away) => {
    expect(told(course, after, ...away)).toEqual([]);
  });

  test.each([
    ["3 or 4 changes", "change every day 3-4 times", ["2026-03-06", "2026-03-07"], "2026-03-08"],
    ["3 or 4 days of changes", "change every day for 3-4 days", ["2026-03-06", "2026-03-07"], "2026-03-08"],
    [
      "a last change less than a gap before day 9",
      "change every 2-3 days until day 9",
      ["2026-03-10", "2026-03-11", "2026-03-12"],
      "2026-03-13",
    ],
  ])("has none where the owner is away on every day it may be: %s", (_, changes, away, nearest) => {
    const [from = "", to = ""] = [away[0], away.at(-1)];
    expect(told([changes], 1, ...away)).toMatchObject([
      { code: "no-open-day", at: { line: 11 }, values: { from: on(from), to: on(to), nearest: on(nearest) } },
    ]);
  });

  // Changes on days 1 to 3, and if needed on 5, 7 and 9.
  test("changes that may not be needed leave the earlier days open: only the day after the last of them is told", () => {
    const course = ["change every day for 3 days", "maybe change every 2 days for 6 days"];
    expect(told(course, 2, "2026-03-12", "2026-03-13")).toMatchObject([
      { code: "owner-cannot-come", values: { day: on("2026-03-13"), nearest: on("2026-03-14") } },
    ]);
  });
});

test("a phase that begins after a visit begins so many days after that one, not after discharge", () => {
  const course = ["closure day 4", "change every day until day 5, first 2 days after closure"];
  expect(run({ course }).problems).toMatchObject([
    {
      code: "course-ends-before-it-begins",
      values: { begins: { day: "2026-03-08" }, ends: { day: "2026-03-07" } },
    },
  ]);
});
