import { describe, expect, test } from "vitest";
import { brief, type Case, courseOf, noSunday, run } from "./help.js";

const briefs = (given: Case) => courseOf(given).visits.map(brief);

// Discharged on Monday 2 March 2026, so that day N is March 2 + N.
describe("visits share a trip", () => {
  // The recheck is on day 9 to 12, the sutures come out on day 11 to 14.
  test("where both days are ours to choose, on the days that suit both", () => {
    const both = ["recheck-1 +suture-removal-1 expected 03-13..03-14"];
    expect(briefs({ course: ["recheck day 9-12", "sutures out day 11-14"] })).toEqual(both);
  });

  // Three things on day 13 to 15: ten to twelve days after the closure on day 3, and a recheck that may be then too.
  test("whatever the order of their lines", () => {
    const after = ["sutures out 10-12 days after closure", "x-ray 10-12 days after closure"];
    expect(briefs({ course: ["closure day 3", "recheck day 12-18", ...after] })).toEqual([
      "closure-1 expected 03-05",
      "recheck-1 +suture-removal-1 +x-ray-1 expected 03-15..03-17",
    ]);
    expect(briefs({ course: ["closure day 3", ...after, "recheck day 12-18"] })).toEqual([
      "closure-1 expected 03-05",
      "suture-removal-1 +x-ray-1 +recheck-1 expected 03-15..03-17",
    ]);
  });

  test("where one waits for nothing and suits each day of the other", () => {
    const course = ["closure day 4-6", "sutures out 10-12 days after closure"];
    expect(briefs({ course: [...course, "x-ray day 3-7"] })).toContain("closure-1 +x-ray-1 expected 03-06..03-08");
    expect(briefs({ course: ["x-ray day 3-7", ...course] })).toContain("x-ray-1 +closure-1 expected 03-06..03-08");
  });

  test("where both are as many days after the same visit, whichever day that is", () => {
    const course = ["closure day 3-4", "sutures out 10-12 days after closure", "x-ray 10-12 days after closure"];
    expect(briefs({ course })).toEqual([
      "closure-1 expected 03-05..03-06",
      "suture-removal-1 +x-ray-1 expected 03-15..03-18",
    ]);
  });

  // The closure is on day 4 or 5, and so is the x-ray, or up to a day later.
  test("where one is due on the day of the other, whichever line is the first", () => {
    const [closure, xray] = ["closure day 4-5", "x-ray 0 days after closure"];
    expect(briefs({ course: [closure, xray] })).toEqual(["closure-1 +x-ray-1 expected 03-06..03-07"]);
    expect(briefs({ course: [xray, closure] })).toEqual(["x-ray-1 +closure-1 expected 03-06..03-07"]);
    expect(courseOf({ course: [xray, closure] }).trips).toEqual({ fewest: 1, likely: 1, most: 1 });
    expect(briefs({ course: [closure, "x-ray 0-1 days after closure"] })).toEqual([
      "closure-1 expected 03-06..03-07",
      "x-ray-1 expected 03-06..03-08",
    ]);
  });
});

// Ten to twelve days after a closure on day 3 or 4; the owner cannot come on the morning of day 16, which is March 18.
test.each([
  ["sutures out", "x-ray", "suture-removal-1 +x-ray-1"],
  ["x-ray", "sutures out", "x-ray-1 +suture-removal-1"],
])("a visit in the morning keeps %s and %s, due on the same days, to its own days", (one, other, both) => {
  const slot = (name: string) => (name === "x-ray" ? ", not after 12:00" : "");
  const after = [one, other].map((name) => `${name} 10-12 days after closure${slot(name)}`);
  const unavailable = ["2026-03-18 06:00-12:30"];
  expect(briefs({ course: ["closure day 3-4", ...after], unavailable })).toContain(`${both} expected 03-15..03-17`);
});

describe("visits are told apart, though the best schedule puts them on one day,", () => {
  // The closure may be on day 4, the x-ray not before day 5. Of three, two that go together leave the third its own days.
  test.each([
    ["closure day 4-6", ["x-ray day 5-6"], "closure-1 expected 03-06..03-08", "x-ray-1 expected 03-07..03-08"],
    [
      "closure day 4-6",
      ["recheck day 4-6", "x-ray day 5-6"],
      "closure-1 +recheck-1 expected 03-06..03-08",
      "x-ray-1 expected 03-07..03-08",
    ],
  ])("where others count from one of them: %s and %j", (closure, others, ...expected) => {
    const sutures = "sutures out 10-12 days after closure";
    expect(briefs({ course: [closure, ...others, sutures] })).toEqual(expect.arrayContaining(expected));
  });

  // The drain comes out on day 3, 4 or 5; a recheck on day 4 or 5 cannot follow it to day 3, nor hold it to days 4 and 5.
  test.each([
    ["injection every 2 days 2 times, first 5 days after drain out"],
    ["injection every 2 days until drain out", "then every 9 days until day 30"],
  ])("where a repeating visit begins or ends with one of them: %s %s", (...repeating) => {
    const apart = ["drain-removal-1 expected 03-05..03-07", "recheck-1 expected 03-06..03-07"];
    const [drain, recheck] = ["drain out day 3-5", "recheck day 4-5"];
    expect(briefs({ course: [drain, recheck, ...repeating] })).toEqual(expect.arrayContaining(apart));
    expect(briefs({ course: [recheck, drain, ...repeating] })).toEqual(expect.arrayContaining(apart));
  });

  // After a closure on day 8 the sutures are in until day 18, long after the recheck.
  test("where one waits for a visit and may be due after the other", () => {
    const course = ["closure day 3-8", "sutures out 10-12 days after closure", "recheck day 14-15"];
    expect(briefs({ course })).toEqual(
      expect.arrayContaining(["suture-removal-1 expected 03-15..03-22", "recheck-1 expected 03-16..03-17"]),
    );
  });

  test.each([
    ["9-12 days after closure", "03-14..03-18"],
    ["10-13 days after closure", "03-15..03-19"],
  ])("where they wait a different number of days: %s", (xray, days) => {
    const course = ["closure day 3-4", "sutures out 10-12 days after closure", `x-ray ${xray}`];
    expect(briefs({ course })).toEqual(
      expect.arrayContaining(["suture-removal-1 expected 03-15..03-18", `x-ray-1 expected ${days}`]),
    );
  });

  // The drain may come out the day before the closure: whatever counts from one does not count from the other.
  test("where they wait for different visits, and so are those they wait for", () => {
    const first = ["drain out day 3-4", "closure day 3-4"];
    const course = [...first, "sutures out 10-12 days after closure", "x-ray 10-12 days after drain out"];
    expect(briefs({ course })).toEqual([
      "drain-removal-1 expected 03-05..03-06",
      "closure-1 expected 03-05..03-06",
      "suture-removal-1 expected 03-15..03-18",
      "x-ray-1 expected 03-15..03-18",
    ]);
  });

  // Due 7 or 8 days after a closure on day 3 or 4. The owner's hours leave the x-ray days 10 and 11, the recheck days 10
  // and 12: after a closure on day 4 the one is on day 11, the other on day 12, and neither is on day 10.
  test("where after a later closure no day would suit both", () => {
    const course = [
      "closure day 3-4",
      "x-ray 7-8 days after closure, not before 10:00",
      "recheck 7-8 days after closure, not after 12:00",
    ];
    const unavailable = ["2026-03-13 06:00-12:30", "2026-03-14 09:30-18:00"];
    expect(briefs({ course, unavailable })).toEqual([
      "closure-1 expected 03-05..03-06",
      "x-ray-1 expected 03-12..03-13",
      "recheck-1 expected 03-12..03-14",
    ]);
  });

  // One wound is changed each day, the other on day 2 or 3 first.
  test("where the changes of two wounds may drift apart", () => {
    const [daily, loose] = ["change every day for 4 days, first tomorrow", "change every 2-3 days for 4 days"];
    expect(briefs({ course: [[daily], [loose]] })).toEqual(
      expect.arrayContaining(["bandage-change-2 expected 03-04", "bandage-change-1-2 expected 03-04..03-05"]),
    );
    expect(briefs({ course: [[loose], [daily]] })).toEqual(
      expect.arrayContaining(["bandage-change-1 expected 03-04..03-05", "bandage-change-2-2 expected 03-04"]),
    );
    expect(briefs({ course: [[loose], [loose]] })).toEqual(
      expect.arrayContaining(["bandage-change-1 expected 03-04..03-05", "bandage-change-1-2 expected 03-04..03-05"]),
    );
  });

  // One wound is changed on day 3 and no other, the other on day 2 or 3.
  test("where the first change of one wound may come before that of another", () => {
    const [third, loose] = ["change every 3 days until day 9", "change every 2-3 days for 3 days"];
    expect(briefs({ course: [[third], [loose]] })).toEqual(
      expect.arrayContaining(["bandage-change-1 expected 03-05", "bandage-change-1-2 expected 03-04..03-05"]),
    );
  });

  // The changes of the second wound end on day 7 or 8, every second day: a fourth comes on day 8 or not at all.
  test("where one of them may not be", () => {
    expect(briefs({ course: [["recheck day 8-11"], ["change every 2 days until day 7-8"]] })).toEqual(
      expect.arrayContaining(["recheck-1 expected 03-10..03-13", "bandage-change-4-2 possible 03-10"]),
    );
  });

  // A fifth change of the first wound hangs on how it heals, one of the second on whether it is closed before.
  test("where one of them may not be for another reason", () => {
    const course = [["change every day for 4-6 days"], ["change every day until day 6", "maybe closure day 5-6"]];
    expect(briefs({ course })).toEqual(
      expect.arrayContaining(["bandage-change-5 possible 03-07", "bandage-change-5-2 possible 03-07 unless closure"]),
    );
  });
});

// Both can be on each of the three days; on the last, with the owner away from 9 to 11, only one before and one after.
test("a day with no hour for all of a trip is none of its days", () => {
  const course = ["recheck day 10-12, not after 10:00", "sutures out day 10-12, not before 09:30"];
  const both = "recheck-1 +suture-removal-1 expected 03-12..";
  expect(briefs({ course })).toEqual([`${both}03-14`]);
  expect(briefs({ course, unavailable: ["2026-03-14 09:00-11:00"] })).toEqual([`${both}03-13`]);
});

describe("what a booked visit is for", () => {
  const daily = "change every day for 3-5 days, first tomorrow";

  // The changes end on day 3, 4 or 5, most likely on day 4.
  test("is what is sure to be done then, and what the likeliest course does", () => {
    expect(briefs({ course: [daily, "recheck day 4"], booked: ["2026-03-06T10:00"] })).toContain(
      "recheck-1 +bandage-change-4 booked 2026-03-06T10:00",
    );
    expect(briefs({ course: [daily, "recheck day 5"], booked: ["2026-03-07T10:00"] })).toEqual([
      "bandage-change-1 expected 03-03",
      "bandage-change-2 expected 03-04",
      "bandage-change-3 expected 03-05",
      "bandage-change-4 possible 03-06",
      "recheck-1 booked 2026-03-07T10:00",
      "bandage-change-5 possible 03-07",
    ]);
  });

  test("is not a decision that is not likely: that is told beside it, and what waits for it", () => {
    const course = ["recheck day 5", "maybe closure day 5", "sutures out 10-14 days after closure"];
    expect(briefs({ course, booked: ["2026-03-07T10:00"] })).toEqual([
      "recheck-1 booked 2026-03-07T10:00",
      "closure-1 possible 03-07 if closure",
      "suture-removal-1 possible 03-17..03-21 if closure",
    ]);
    const changes = ["change every day for 5 days, first tomorrow", "maybe closure day 5"];
    expect(briefs({ course: changes, booked: ["2026-03-07T10:00"] }).slice(4)).toEqual([
      "closure-1 possible 03-07 if closure",
      "bandage-change-5 booked 2026-03-07T10:00 unless closure",
    ]);
  });

  test("is a decision that the appointment has settled", () => {
    const course = ["recheck day 3", "maybe closure day 5"];
    expect(briefs({ course, booked: ["2026-03-07T10:00"] })).toEqual([
      "recheck-1 expected 03-05",
      "closure-1 booked 2026-03-07T10:00 if closure",
    ]);
  });

  // Of three changes the last is on day 5, and day 7 is for the recheck. Of two the last is on day 3, the recheck two or
  // three days later, and day 7 is for the x-ray.
  test("is what the likeliest course puts there, where nothing is only ever on that day", () => {
    const course = ["change every 2 days 2-3 times, first tomorrow", "recheck 2-3 days after the last change"];
    expect(briefs({ course: [...course, "x-ray day 3-7"], booked: ["2026-03-09T10:00"] })).toEqual([
      "bandage-change-1 expected 03-03",
      "bandage-change-2 expected 03-05",
      "x-ray-1 expected 03-05..03-09",
      "bandage-change-3 possible 03-07",
      "recheck-1 booked 2026-03-09T10:00",
    ]);
  });

  // Day 5 is for the recheck after four changes, or for a fifth change.
  test("is told, whatever it will be", () => {
    const { visits } = courseOf({
      course: [daily, "recheck 1 day after the last change"],
      booked: ["2026-03-07T10:00"],
    });
    expect(visits.map(({ at }) => at)).toContain("2026-03-07T10:00");
  });

  // If the changes end on day 3, day 4 is booked for nothing but the x-ray.
  test("is nothing that may have to be on another booked day", () => {
    const course = [daily, "recheck day 3", "x-ray day 2-4"];
    expect(briefs({ course, booked: ["2026-03-05T10:00", "2026-03-06T10:00"] })).toEqual(
      expect.arrayContaining([
        "recheck-1 +bandage-change-3 booked 2026-03-05T10:00",
        "x-ray-1 expected 03-04..03-06",
        "bandage-change-4 booked 2026-03-06T10:00",
      ]),
    );
  });

  test("is done at the partner clinic on a day on which only that is open", () => {
    const hours = { ...noSunday, sunday: [{ open: "08:00", close: "14:00" }] };
    const partner = { name: "Lakeside", phone: "+13125550199", address: [], hours };
    const given = { course: ["recheck day 5-7"], hours: noSunday, clinic: { partner }, booked: ["2026-03-08T10:00"] };
    expect(courseOf(given).visits).toMatchObject([
      { at: "2026-03-08T10:00", days: ["2026-03-08"], earliest: "2026-03-08", where: "Lakeside" },
    ]);
  });
});

describe("what an appointment does to the course", () => {
  // It settles that there is a closure; how long the changes go on is as open as before.
  test("the likeliest of the ways that are left has lengths in the middle of their ranges", () => {
    const course = ["change every day for 3-5 days, first tomorrow", "maybe closure day 9"];
    const { purposes } = courseOf({ course, booked: ["2026-03-11T10:00"] });
    expect(purposes).toContainEqual({ kind: "bandage-change", counts: { fewest: 3, likely: 4, most: 5 } });
  });

  // The owner is away on day 4, and yet has an appointment: the change of that day is not put off.
  test("a change is on the day that was agreed, though the owner's own words speak against it", () => {
    const given = {
      course: ["change every 2 days 3 times"],
      unavailable: ["2026-03-06"],
      booked: ["2026-03-06T10:00"],
    };
    expect(run(given).problems.map(({ code }) => code)).toEqual(["booked-when-owner-cannot-come"]);
    expect(briefs(given)).toEqual([
      "bandage-change-1 expected 03-04",
      "bandage-change-2 booked 2026-03-06T10:00",
      "bandage-change-3 expected 03-08",
    ]);
  });
});
