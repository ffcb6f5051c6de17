import { describe, expect, test } from "vitest";
import { brief, type Case, courseOf } from "./help.js";

/** The days of March that a course aims at, in the order of its visits. Day N is March 2 + N. */
const aims = (given: Case) => courseOf(given).visits.map(({ id, ideal }) => `${id} ${ideal.slice(8)}`);
const listed = (given: Case) => courseOf(given).visits.map(brief);

describe("the day a visit is aimed at", () => {
  // Fewest trips, no closure: days 3, 6, 9 and 12. With it: days 3 and 6, and the closure on day 9, for a change is due then.
  // A fifth change can be on days 10 to 14; after the fourth, day 13 is nearest to their middle. A sixth: days 12 to 14.
  test("is that of the likeliest course, else of the one with the decision taken, else the middle of what is left", () => {
    expect(aims({ course: ["change every 2-3 days until day 14", "maybe closure day 7-14"] })).toEqual([
      "bandage-change-1 05",
      "bandage-change-2 08",
      "closure-1 11",
      "bandage-change-3 11",
      "bandage-change-4 14",
      "bandage-change-5 15",
      "bandage-change-6 16",
      "bandage-change-7 16",
    ]);
  });

  // Likeliest: daily to day 4, then days 7, 10 and 13. Only day 14 is left after that.
  test("of changes that come only if the wound heals otherwise is after the last that is likely", () => {
    const course = ["change every day for 3-5 days, first tomorrow", "then every 2-3 days until day 14"];
    expect(aims({ course }).map((aim) => aim.slice(-2))).toEqual("03 04 05 06 09 12 15 16 16".split(" "));
  });

  // Likely on days 6 and 12; a third is on days 15 to 21, but not on day 18.
  test("is the earlier of two as near to the middle", () => {
    const given = { course: ["change every 5-7 days 1-3 times"], clinic: { closed: ["2026-03-20"] } };
    expect(aims(given)).toEqual(["bandage-change-1 08", "bandage-change-2 14", "bandage-change-3 19"]);
  });

  // Closed on day 3, which is the 5th: four to eight days later is the 9th to the 13th.
  test("of a visit that counts from another is in the middle of the days after that one", () => {
    expect(aims({ course: ["closure day 3", "recheck 4-8 days after closure"] })).toEqual([
      "closure-1 05",
      "recheck-1 11",
    ]);
  });

  // The recheck alone is on day 5; with an x-ray, both are on day 7.
  test("is not moved for a decision that is not likely", () => {
    expect(aims({ course: ["recheck day 3-7", "maybe x-ray day 7-11"] })).toEqual(["recheck-1 07", "x-ray-1 09"]);
  });

  // Closed on day 2, and no hour suits the recheck and the others: one trip is on day 1, the other on day 3.
  test("where two schedules are as good, is the earlier for as many visits as may be", () => {
    const afternoon = ["x-ray", "blood test"].map((name) => `${name} day 1-3, not before 14:00`);
    const course = ["recheck day 1-3, not after 10:00", ...afternoon];
    expect(aims({ course, clinic: { closed: ["2026-03-04"] } })).toEqual(["x-ray-1 03", "recheck-1 05"]);
  });

  // Days 3, 6 and 9, and the recheck with the last; a second change before the booked day is on day 4.
  test("is told apart before and after an appointment", () => {
    const course = ["change every 2-3 days until day 10", "recheck day 9-11"];
    expect(aims({ course, booked: ["2026-03-08T10:00"] })).toEqual([
      "bandage-change-1 05",
      "bandage-change-2 06",
      "bandage-change-3 08",
      "recheck-1 11",
      "bandage-change-4 11",
      "bandage-change-5 12",
    ]);
  });
});

describe("the order of visits", () => {
  // Day 8 is booked. A fifth change before it comes only if the daily ones go on to day 4: days 1 to 4, 6 and 8.
  test("one that only a slower healing brings stands before the appointment all the same", () => {
    const course = ["change every day for 2-4 days", "then every 2-3 days until day 12"];
    expect(listed({ course, booked: ["2026-03-10T10:00"] })).toEqual([
      "bandage-change-1 expected 03-03",
      "bandage-change-2 expected 03-04",
      "bandage-change-3 expected 03-05..03-07",
      "bandage-change-4 possible 03-06..03-08",
      "bandage-change-5 possible 03-08",
      "bandage-change-6 booked 2026-03-10T10:00",
      "bandage-change-7 expected 03-12..03-13",
      "bandage-change-8 possible 03-14",
    ]);
  });

  test("on one day they stand as they were written, whatever days they could be on", () =>
    expect(listed({ course: ["recheck day 4", "x-ray day 3-4"] })).toEqual(["recheck-1 +x-ray-1 expected 03-06"]));

  test("on one day they stand as they were written, however many there have been", () =>
    expect(listed({ course: ["change every day for 4 days", "injection every day 2 times, first day 3"] })).toEqual([
      "bandage-change-1 expected 03-03",
      "bandage-change-2 expected 03-04",
      "bandage-change-3 +injection-1 expected 03-05",
      "bandage-change-4 +injection-2 expected 03-06",
    ]));
});

// Days 3, 6, 9 and 12: the second change is by the second line, though one on day 4 would be by the first.
test("a visit points at the line that the likeliest course has it from", () => {
  const { visits } = courseOf({ course: ["change every 2-3 days until day 5", "then every 3 days until day 12"] });
  expect(visits.map(({ from }) => from.line)).toEqual([10, 11, 11, 11]);
});

describe("what would spare a visit", () => {
  const changes = "change every day until drain out or day 5";

  test("is the decision that ends the run, wherever its line stands", () => {
    const sparing = { course: ["recheck day 9", "maybe drain out day 3-4", changes] };
    expect(listed(sparing)).toEqual([
      "bandage-change-1 expected 03-03",
      "bandage-change-2 expected 03-04",
      "drain-removal-1 possible 03-05..03-06 if drain-removal",
      "bandage-change-3 possible 03-05 unless drain-removal",
      "bandage-change-4 possible 03-06 unless drain-removal",
      "bandage-change-5 possible 03-07 unless drain-removal",
      "recheck-1 expected 03-11",
    ]);
  });

  // The drain out on day 3 or the closure on day 4 ends the changes, so that from day 4 on neither alone spares one.
  test("is told only where it is the one thing that can", () => {
    const course = ["maybe drain out day 3-5", "maybe closure day 4", changes];
    expect(listed({ course }).filter((visit) => visit.startsWith("bandage"))).toEqual([
      "bandage-change-1 expected 03-03",
      "bandage-change-2 expected 03-04",
      "bandage-change-3 possible 03-05 unless drain-removal",
      "bandage-change-4 possible 03-06",
      "bandage-change-5 possible 03-07",
    ]);
  });

  test("is a closure, be it the first try or the second", () => {
    const course = ["maybe closure day 3", "maybe closure day 5", "change every day until day 5"];
    expect(listed({ course }).filter((visit) => visit.startsWith("bandage"))).toEqual([
      "bandage-change-1 expected 03-03",
      "bandage-change-2 expected 03-04",
      "bandage-change-3 possible 03-05 unless closure",
      "bandage-change-4 possible 03-06 unless closure",
      "bandage-change-5 possible 03-07 unless closure",
    ]);
  });

  test("is the decision, not what is sure to end the run later", () => {
    const course = ["drain out day 5", "maybe closure day 3-4", "change every day until drain out"];
    expect(listed({ course })).toEqual([
      "bandage-change-1 expected 03-03",
      "bandage-change-2 expected 03-04",
      "closure-1 possible 03-05..03-06 if closure",
      "bandage-change-3 possible 03-05 unless closure",
      "bandage-change-4 possible 03-06 unless closure",
      "drain-removal-1 expected 03-07",
    ]);
  });

  // Nothing but the closure can be on day 9. Before it a change is every 2 or 3 days: two at least, four at most.
  test("is not a decision that an appointment has settled", () => {
    const given = {
      course: ["maybe closure day 4-9", "change every 2-3 days until day 8"],
      booked: ["2026-03-11T10:00"],
    };
    expect(listed(given)).toEqual([
      "bandage-change-1 expected 03-04..03-05",
      "bandage-change-2 expected 03-06..03-08",
      "bandage-change-3 possible 03-08..03-10",
      "bandage-change-4 possible 03-10",
      "closure-1 booked 2026-03-11T10:00 if closure",
    ]);
  });
});

test("visits that begin only after a decision come only with it", () => {
  const course = ["maybe closure day 4", "change every 2 days for 4 days, first 2 days after closure"];
  expect(listed({ course })).toEqual([
    "closure-1 possible 03-06 if closure",
    "bandage-change-1 possible 03-08 if closure",
    "bandage-change-2 possible 03-10 if closure",
  ]);
});
