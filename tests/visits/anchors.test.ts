import { describe, expect, test } from "vitest";
import { brief, courseOf, run, told } from "./help.js";

const visits = (...course: string[][]) => courseOf({ course }).visits.map(brief);
const often = (kind: string, ...course: string[][]) =>
  courseOf({ course }).purposes.find((purpose) => purpose.kind === kind)?.counts;
const always = (count: number) => ({ fewest: count, likely: count, most: count });

// Discharged on Monday 2 March, so that day 7 is the 9th.
describe("days counted from the last of several visits", () => {
  const daily = "change every day for 3 days";
  const recheck = "recheck 4 days after the last change";

  test("are counted from its own kind, whatever else repeats", () => {
    expect(visits([daily, "injection every 2 days for 8 days", recheck])).toContain("recheck-1 expected 03-09");
  });

  test("are counted in their own care before any other", () => {
    const both = visits([daily, recheck], ["change every day for 6 days", "x-ray 4 days after the last change"]);
    expect(both).toContain("recheck-1 expected 03-09");
    expect(both).toContain("x-ray-1-2 expected 03-12");
    expect(visits([daily], [recheck])).toContain("recheck-1-2 expected 03-09");
  });

  test("may be counted from a visit that comes once", () => {
    expect(visits(["closure day 4", "sutures out day 14", "recheck 2 days after the last closure"])).toContain(
      "recheck-1 expected 03-08",
    );
  });
});

describe("days counted from a single visit", () => {
  const [sutures, staples] = ["sutures out 10 days after closure", "staples out 10 days after closure"];

  test("are counted in their own care before any other", () => {
    const both = visits(["closure day 3", sutures], ["closure day 6", staples]);
    expect(both).toContain("suture-removal-1 expected 03-15");
    expect(both).toContain("staple-removal-1-2 expected 03-18");
    expect(visits(["closure day 3"], [staples])).toContain("staple-removal-1-2 expected 03-15");
  });

  test("are never counted from themselves", () => {
    expect(visits(["recheck 7 days after recheck", "recheck day 3"])).toEqual([
      "recheck-1 expected 03-05",
      "recheck-2 expected 03-12",
    ]);
  });

  test.each([
    [["change every day for 3 days", "drain out day 3", sutures], "anchor-unknown", ["closure", ["drain out"]]],
    [["recheck 7 days after recheck"], "anchor-unknown", ["recheck", []]],
    [["change every day for 3 days", "recheck 3 days after change"], "anchor-repeats", ["change"]],
  ])("where there is none, what was written and what could have been are told: %j", (course, code, [given, known]) => {
    const values = known === undefined ? { given } : { given, known };
    expect(run({ course }).problems.map((problem) => [problem.code, problem.values])).toEqual([[code, values]]);
  });
});

test("two kinds that repeat in one care both begin at discharge", () => {
  const course = [["change every day for 3 days", "flush every 2 days for 6 days"]];
  expect(often("bandage-change", ...course)).toEqual(always(3));
  expect(often("wound-flush", ...course)).toEqual(always(3));
});

describe("what ends a visit that repeats", () => {
  const splint = "splint change every 2 days while bandaged";

  test("a bandage ends when it comes off, the one of its own care before any other", () => {
    expect(often("splint-change", [splint, "recheck day 4", "bandage off day 7"])).toEqual(always(3));
    expect(often("splint-change", ["bandage off day 5"], [splint, "bandage off day 9"])).toEqual(always(4));
    expect(often("splint-change", ["bandage off day 7"], [splint])).toEqual(always(3));
  });

  test("where no bandage comes off, other visits do not stand in for it", () => {
    expect(run({ course: ["recheck day 5", splint] }).problems).toMatchObject([
      { code: "bandage-end-unknown", at: { line: 11 } },
    ]);
  });

  test("what has nothing to do with an open wound ends with its own words alone", () => {
    expect(often("injection", ["injection every 2 days until day 12", "closure day 6"])).toEqual(always(6));
    expect(often("injection", ["injection every 2 days until drain out", "drain out day 7"])).toEqual(always(3));
  });

  // The closure falls on day 7: one change on day 5, and none two days later.
  test("a closure whose day hangs on another visit ends the changes that begin before it", () => {
    const course = [
      "drain out day 4",
      "closure 3 days after drain out",
      "change every 2 days until day 12, first day 5",
    ];
    expect(often("bandage-change", course)).toEqual(always(1));
  });

  // Changes on days 3, 5, 7 and 9; closed by day 3 there are none.
  test("a closure that names no day may end them on any", () => {
    const course = ["change every 2 days until day 10, first day 3", "maybe closure"];
    expect(often("bandage-change", course)).toEqual({ fewest: 0, likely: 4, most: 4 });
  });
});

// Discharged on Monday, March 2, at a clinic that never closes: day N is March 2 + N.
describe("changes that begin when the wound has been shut are not ended by that", () => {
  const changes = (course: string[]) =>
    courseOf({ course })
      .visits.filter(({ purposes }) => purposes.some(({ kind }) => kind === "bandage-change"))
      .map(({ earliest }) => earliest.slice(5));

  test.each([
    [
      ["drain out day 3", "closure 2 days after drain out", "change every 2 days until day 14, first day 8"],
      ["03-10", "03-12", "03-14", "03-16"],
    ],
    [
      [
        "closure day 4",
        "sutures out 10 days after closure",
        "change every 2 days for 6 days, first 2 days after sutures out",
      ],
      ["03-18", "03-20", "03-22"],
    ],
    [
      ["closure day 4", "drain out day 5", "change every 2 days for 6 days, first 2 days after drain out"],
      ["03-09", "03-11", "03-13"],
    ],
    // Both count from the drain, whatever day of its window that is.
    [
      [
        "drain out day 3-6",
        "closure 2 days after drain out",
        "change every 2 days for 5 days, first 4 days after drain out",
      ],
      ["03-09", "03-11", "03-13"],
    ],
  ])("%j", (course, days) => expect(changes(course)).toEqual(days));

  test("a line that nothing leaves a day is asked about, and not dropped in silence", () =>
    expect(told({ course: ["closure day 5-6", "change every 2 days until day 12, first day 6"] })).toEqual([
      "repeat-never-comes 11:9+6",
    ]));
});
