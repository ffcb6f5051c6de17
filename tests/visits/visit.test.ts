import { describe, expect, test } from "vitest";
import type { Plan } from "#plan/plan.js";
import { computeVisits } from "../../src/compute/visits/visits.js";
import { type Case, courseOf, kinds, noSunday, planOf } from "./help.js";

// Discharged on Monday 2 March, so that day N is March 2 + N. A visit takes 20 minutes where its kind says nothing else.
test("a trip takes as long as all that is done on it: 60 minutes a closure, 30 an x-ray, 20 a recheck", () => {
  const { visits } = courseOf({ course: ["closure day 5", "x-ray day 5", "recheck day 5", "recheck day 9"] });
  expect(visits.map(({ purposes, minutes }) => [purposes.length, minutes])).toEqual([
    [3, 110],
    [1, 20],
  ]);
});

// Courses begin at line 10, appointments follow. Changes on days 1 and 2, then on 5 and 8; that of day 2 is booked.
test("a visit points at the line it follows from, a booked one at its appointment", () => {
  const { visits } = courseOf({
    course: [["recheck day 10", "change every day for 2 days", "then every 3 days until day 8"], ["injection day 20"]],
    booked: ["2026-03-04T10:00"],
  });
  expect(visits.map(({ id, from, purposes }) => [id, from.line, ...purposes.map((one) => one.from.line)])).toEqual([
    ["bandage-change-1", 11, 11],
    ["bandage-change-2", 14, 11],
    ["bandage-change-3", 12, 12],
    ["bandage-change-4", 12, 12],
    ["recheck-1", 10, 10],
    ["injection-1-2", 13, 13],
  ]);
});

// The clinic is closed on Sunday, day 6, and the partner is open: the last change is on day 5 or 6, the recheck on day 6 or 7.
test("a visit is at the partner's only where each of its days is", () => {
  const sunday = [{ open: "10:00", close: "14:00" }];
  const partner = { name: "Lakeside", phone: "+13125550199", address: [], hours: { ...noSunday, sunday } };
  const { visits } = courseOf({
    course: ["change every day for 5-6 days, first tomorrow", "recheck 1 day after the last change"],
    hours: noSunday,
    clinic: { partner },
  });
  const where = new Map(visits.map((visit) => [visit.id, [visit.earliest, visit.latest, visit.where]]));
  expect(where.get("bandage-change-6")).toEqual(["2026-03-08", "2026-03-08", "Lakeside"]);
  expect(where.get("recheck-1")).toEqual(["2026-03-08", "2026-03-09", null]);
});

describe("after visits that took place", () => {
  const ids = (given: Case, ...visited: string[][]) => {
    const done = visited.map((visit): Plan["done"][number] => ({
      at: "2026-03-01T10:00",
      visit,
      did: [],
      decided: "continue",
    }));
    const { value } = computeVisits({ ...planOf(given), revision: done.length, done }, kinds);
    return value?.visits.map(({ id }) => id);
  };

  test("those to come go on with the number of their own kind", () => {
    const given = { course: ["change every day for 2 days", "recheck day 5", "x-ray day 9"] };
    expect(ids(given, ["change"], ["change", "recheck"])).toEqual([
      "bandage-change-3",
      "bandage-change-4",
      "recheck-2",
      "x-ray-1",
    ]);
  });

  // Two changes were planned for the second wound, and the first of them has been.
  test("those of a second wound go on as well: no id of a visit that was is given to another", () => {
    const given = { course: [["recheck day 10"], ["change every day for 2 days"]] };
    expect(ids(given)).toEqual(["bandage-change-1-2", "bandage-change-2-2", "recheck-1"]);
    const left = { course: [["recheck day 9"], ["change every day 1 time"]] };
    expect(ids(left, ["change"])).toEqual(["bandage-change-2-2", "recheck-1"]);
  });
});
