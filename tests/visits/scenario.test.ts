import { describe, expect, test } from "vitest";
import { link } from "../../src/compute/visits/link.js";
import { readLines } from "../../src/compute/visits/read-lines.js";
import { scenariosOf } from "../../src/compute/visits/scenario.js";
import { brief, type Case, courseOf, kinds, planOf } from "./help.js";

const visits = (given: Case) => courseOf(given).visits.map(brief);
const often = (kind: string, given: Case) => courseOf(given).purposes.find((purpose) => purpose.kind === kind)?.counts;

// Discharged on Monday 2 March, so that day 5 is the 7th.
describe("a repeating line that may not be needed", () => {
  const given = {
    course: ["recheck day 10", "change every day for 3 days", "maybe change every 2 days for 4 days"],
  };

  test("comes or does not, and what is sure before it stays sure", () => {
    expect(visits(given)).toEqual([
      "bandage-change-1 expected 03-03",
      "bandage-change-2 expected 03-04",
      "bandage-change-3 expected 03-05",
      "bandage-change-4 possible 03-07 if bandage-change",
      "bandage-change-5 possible 03-09 if bandage-change",
      "recheck-1 expected 03-12",
    ]);
    expect(often("bandage-change", given)).toEqual({ fewest: 3, likely: 3, most: 5 });
  });

  // Injections on days 1 and 2, whether or not there are more changes.
  test("has nothing to do with a line of another kind", () => {
    const course = [...given.course, "injection every day for 2 days", "x-ray 3 days after the last injection"];
    expect(often("injection", { course })).toEqual({ fewest: 2, likely: 2, most: 2 });
    expect(visits({ course })).toContain("x-ray-1 expected 03-07");
  });

  test("leaves what counts from the last of them sure, where some line of them is", () => {
    const [, ...changes] = given.course;
    expect(visits({ course: [...changes, "recheck 2 days after the last change"] })).toContain(
      "recheck-1 expected 03-07..03-11",
    );
  });

  test("takes what counts from the last of them with it, where no line of them is sure", () => {
    const course = [
      "change every day for 2 days",
      "maybe injection every day for 3 days",
      "recheck 2 days after the last injection",
    ];
    expect(visits({ course })).toContain("recheck-1 possible 03-07 if injection");
    expect(courseOf({ course }).ends).toEqual({ earliest: "2026-03-04", latest: "2026-03-07" });
    expect(often("recheck", { course })).toEqual({ fewest: 0, likely: 0, most: 1 });
  });
});

describe("a repeating line that begins after a decision", () => {
  const after = "change every 2 days for 4 days, first 2 days after closure";

  // Injections on days 1 to 3; closed on day 5, then changes on days 7 and 9.
  test("comes only with it, whatever other lines repeat before it", () => {
    const given = { course: ["injection every day for 3 days", "maybe closure day 5", after] };
    expect(often("injection", given)).toEqual({ fewest: 3, likely: 3, most: 3 });
    expect(often("bandage-change", given)).toEqual({ fewest: 0, likely: 0, most: 2 });
    expect(visits(given)).toContain("bandage-change-2 possible 03-11 if closure");
  });

  test("brings what counts from its last visit only with it as well", () => {
    const given = { course: ["maybe closure day 5", after, "recheck 3 days after the last change"] };
    expect(visits(given)).toContain("recheck-1 possible 03-14 if closure");
    expect(courseOf(given).trips).toEqual({ fewest: 0, likely: 0, most: 4 });
  });
});

describe("the likeliest way", () => {
  // Somebody comes on day 5: for a fifth change, or after four changes for the x-ray alone.
  test("is the one with the fewest decisions, be it longer than the middle of its range", () => {
    const given = {
      course: ["change every day for 3-5 days, first tomorrow", "maybe x-ray day 5"],
      booked: ["2026-03-07T10:00"],
    };
    expect(often("bandage-change", given)).toEqual({ fewest: 3, likely: 5, most: 5 });
    expect(often("x-ray", given)).toEqual({ fewest: 0, likely: 0, most: 1 });
  });

  // Day 9 is within the closure's days, and saves a trip; the middle of them is day 11.
  test("a decision is aimed at the day it would have in a course in which it is taken", () => {
    const { visits } = courseOf({ course: ["maybe closure day 7-14", "recheck day 9"] });
    expect(visits.map(({ id, ideal }) => [id, ideal])).toContainEqual(["closure-1", "2026-03-11"]);
  });
});

test("two thousand ways a course may go are looked at, and no more", () => {
  const ways = (most: number) => {
    const course = [`change every 2 days 1-100 times`, `injection every 2 days 1-${most} times`];
    const model = link(readLines(planOf({ course }), kinds).lines).value;
    return model && scenariosOf(model)?.length;
  };
  expect(ways(20)).toBe(2000);
  expect(ways(21)).toBeUndefined();
});
