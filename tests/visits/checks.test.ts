import { describe, expect, test } from "vitest";
import { computeVisits } from "../../src/compute/visits/visits.js";
import { brief, type Case, courseOf, everyDay, kinds, noSunday, planOf, run } from "./help.js";

/** Code, values and line of each problem of a plan. Courses begin at line 10. */
const all = (given: Case) => run(given).problems.map(({ code, values, at }) => ({ code, values, line: at.line }));
const on = (day: string) => ({ day: `2026-${day}` });

// Discharged on Monday 2 March 2026, so that day N is March 2 + N; the first two Sundays are days 6 and 13.
describe("a gap that the clinic's days cannot keep", () => {
  test("each is told, with the day it was due and the next that would do", () => {
    expect(all({ course: ["change every day for 14 days, first tomorrow"], hours: noSunday })).toEqual([
      { code: "repeat-meets-closed-day", values: { day: on("03-08"), after: on("03-09") }, line: 10 },
      { code: "repeat-meets-closed-day", values: { day: on("03-15"), after: on("03-16") }, line: 10 },
    ]);
  });

  test("one that only some ways the wound may go would meet is a note beside one that all meet", () => {
    expect(all({ course: ["change every day for 7-14 days, first tomorrow"], hours: noSunday })).toMatchObject([
      { code: "repeat-meets-closed-day", values: { day: on("03-08") } },
      { code: "repeat-may-meet-closed-day", values: { day: on("03-15") } },
    ]);
  });

  // After the change of day 3 one is due on day 6, on which we are closed; the x-ray, on day 5, ends them before that.
  test("is none where what ends the visits comes first", () => {
    const given = {
      course: ["x-ray day 5-6", "change every 3 days until day 6 or x-ray"],
      clinic: { closed: ["2026-03-08", "2026-03-09"] },
    };
    expect(all(given)).toEqual([]);
    expect(courseOf(given).visits.map(brief)).toEqual(["bandage-change-1 expected 03-05", "x-ray-1 expected 03-07"]);
  });

  test("where no day for months will do, the day it was due is named", () => {
    const course = ["change every 2 days for 6 days"];
    expect(all({ course, unavailable: ["2026-03-03 to 2027-03-03"] })).toContainEqual({
      code: "no-day-near",
      values: { day: on("03-04") },
      line: 10,
    });
  });
});

test("a change at the partner clinic is told at its own line, whatever single visits stand beside it", () => {
  const partner = { name: "Lakeside", phone: "+13125550199", address: [], hours: everyDay };
  const course = ["recheck day 2", "change every day for 7 days, first tomorrow"];
  expect(all({ course, hours: noSunday, clinic: { partner } })).toEqual([
    { code: "visit-at-partner", values: { day: on("03-08"), partner: "Lakeside" }, line: 11 },
  ]);
});

describe("a repeating line that has no room", () => {
  test.each([
    // From discharge to day 3.
    [["change every 7 days for 3 days"], { gap: 7, window: 3 }],
    // The last change of the first line is on day 3, and day 6 is three days on.
    [["change every day for 3 days, first tomorrow", "then every 7 days until day 6"], { gap: 7, window: 3 }],
    // From the first change to day 6.
    [["change every 5 days until day 6, first day 3"], { gap: 5, window: 3 }],
  ])("%j: the gap and the days it has are named", (course, values) => {
    expect(all({ course })).toEqual([{ code: "gap-longer-than-window", values, line: 9 + course.length }]);
  });

  test.each([
    ["change every day until day 3, first day 5", "03-07", "03-05"],
    ["change every 2 days until day 5, first day 6", "03-08", "03-07"],
  ])("%s: it would begin on %s and end on %s", (line, begins, ends) => {
    expect(all({ course: [line] })).toEqual([
      { code: "course-ends-before-it-begins", values: { begins: on(begins), ends: on(ends) }, line: 10 },
    ]);
  });

  test("a line that goes on with another begins on the day after it at the soonest", () => {
    expect(all({ course: ["change every day for 5 days", "then every 2 days until day 5"] })).toEqual([
      { code: "course-ends-before-it-begins", values: { begins: on("03-08"), ends: on("03-07") }, line: 11 },
    ]);
  });

  test("one visit has room on the day it begins", () => {
    const given = { course: ["change every 2 days 1 time, first day 5"] };
    expect(all(given)).toEqual([]);
    expect(courseOf(given).visits.map(brief)).toEqual(["bandage-change-1 expected 03-07"]);
  });
});

// Cote, Clinical Veterinary Advisor, 4th ed: drain out 3-5 days (p. 3223), draining wounds changed from daily to weekly (p. 3234).
test.each([
  ["drain out day 3-7", "window-unusual", { given: "drain out", from: 3, to: 7, usualFrom: 3, usualTo: 5 }],
  [
    "change every 8-10 days until day 30",
    "gap-unusual",
    { given: "change", from: 8, to: 10, usualFrom: 1, usualTo: 7 },
  ],
])("%s is told with the published days beside it", (line, code, values) => {
  expect(all({ course: [line] })).toEqual([{ code, values, line: 10 }]);
});

describe("why a visit has no day", () => {
  const fair = { from: "2026-03-05", to: "2026-03-05", name: "Town fair" };
  const partner = { name: "Lakeside", phone: "+13125550199", address: [], hours: everyDay };

  test.each([
    ["recheck day 10, not before 22:00", "03-12"],
    ["recheck day 3-5, not before 22:00", "03-05"],
  ])("%s: where no day for months will do, no other is offered", (line, day) => {
    expect(all({ course: [line] })).toEqual([{ code: "no-day-near", values: { day: on(day) }, line: 10 }]);
  });

  test("where a partner clinic is open on a day we are closed, it is the owner's absence", () => {
    const given = { course: ["recheck day 3"], unavailable: ["2026-03-05"] };
    const values = { day: on("03-05"), nearest: on("03-06") };
    expect(all({ ...given, clinic: { closed: [fair], partner } })).toEqual([
      { code: "owner-cannot-come", values, line: 10 },
    ]);
    expect(all({ ...given, clinic: { closed: [fair] } })).toEqual([
      { code: "closed-for", values: { ...values, closure: "Town fair" }, line: 10 },
    ]);
  });

  // Day 4 is a Friday, on which the owner cannot come.
  test.each([
    ["the clinician is in", "friday" as const, undefined],
    ["the clinician is not needed", "tuesday" as const, ["closure"]],
  ])("where %s, it is the owner's absence", (_, day, sees) => {
    const days = [day, "saturday" as const];
    const clinicians = [{ name: "Dr. Haddad", days, away: [], ...(sees ? { sees } : {}) }];
    const given = { course: ["recheck day 4"], unavailable: ["2026-03-06"], clinician: "Dr. Haddad" };
    expect(all({ ...given, clinic: { clinicians } })).toEqual([
      { code: "owner-cannot-come", values: { day: on("03-06"), nearest: on("03-07") }, line: 10 },
    ]);
  });

  // Of days 3 and 4 only the second is closed for something that has a name.
  test("of several closed days the closure that has a name is told, be it the last", () => {
    const closed = ["2026-03-05", { ...fair, from: "2026-03-06", to: "2026-03-06" }];
    const values = { from: on("03-05"), to: on("03-06"), nearest: on("03-07") };
    expect(all({ course: ["recheck day 3-4"], clinic: { closed } })).toEqual([
      { code: "no-open-day-for", values: { ...values, closure: "Town fair" }, line: 10 },
    ]);
    expect(all({ course: ["recheck day 3-4"], clinic: { closed: ["2026-03-05", "2026-03-06"] } })).toEqual([
      { code: "no-open-day", values, line: 10 },
    ]);
  });
});

describe("a visit that has no day in some ways the wound may go", () => {
  const changes = "change every day for 3-5 days, first tomorrow";

  // If the changes end on day 5, the recheck is due on day 6 and the clinic is closed until day 8.
  test("is told with the nearest day that would do, be it days away", () => {
    const closed = [{ from: "2026-03-08", to: "2026-03-10", name: "Building work" }];
    const course = [changes, "recheck 1 day after the last change"];
    expect(all({ course, clinic: { closed } })).toEqual([
      {
        code: "closed-for",
        values: { day: on("03-08"), nearest: on("03-11"), closure: "Building work" },
        line: 11,
      },
    ]);
  });

  // If the changes end on day 3, the recheck is on day 4, and both that count from it are due on day 14.
  test("is told, and not the visit that it and others count from, though that would be the only one to move", () => {
    const after = ["x-ray 10 days after recheck", "blood test 10 days after recheck"];
    const course = [changes, "recheck 1 day after the last change", ...after];
    const values = { day: on("03-16"), nearest: on("03-17") };
    expect(all({ course, clinic: { closed: ["2026-03-16"] } })).toEqual([
      { code: "closed-day", values, line: 12 },
      { code: "closed-day", values, line: 13 },
    ]);
  });

  // No hour suits both on day 10: one moves by a day. The changes can go in more ways than that can be tried in.
  const clash = ["recheck day 10, not after 10:00", "x-ray day 10, not before 14:00"];

  // Closed on days 7 to 9 and 11 to 14: day 6 is four days before, day 15 five days after.
  test("is told with the nearer of an earlier day and a later one", () => {
    const closed = [7, 8, 9, 11, 12, 13, 14].map((day) => `2026-03-${String(day + 2).padStart(2, "0")}`);
    expect(all({ course: clash, clinic: { closed } })).toMatchObject([
      { code: "day-against-others", values: { day: on("03-12"), nearest: on("03-08") } },
    ]);
  });

  test("is told though the rest of the course could go in any number of ways", () => {
    expect(all({ course: [...clash, "change every 1-7 days for 2-150 days, first tomorrow"] })).toMatchObject([
      { code: "day-against-others", values: { day: on("03-12"), nearest: on("03-13") } },
    ]);
  });

  test("is not looked for where too many others could move as well: it is the course that does not fit", () => {
    const others = Array.from({ length: 16 }, () => "blood test day 10");
    expect(all({ course: [...clash, ...others] })).toEqual([{ code: "course-fits-no-calendar", values: {}, line: 1 }]);
  });
});

describe("days that are usual for a kind of care, and not for others", () => {
  const ear = [{ id: "ear-haematoma", usualCourse: ["suture removal day 14-21"] }];
  const told = (topic: string, ...course: string[]) => {
    const plan = planOf({ course });
    const care = plan.care.map((one) => ({ ...one, topic }));
    return computeVisits({ ...plan, care }, kinds, ear).problems.map(({ code, values }) => ({ code, values }));
  };

  test("what its own course says is not out of the ordinary, and what others usually do is", () => {
    expect(told("ear-haematoma", "sutures out day 14-16")).toEqual([]);
    expect(told("ear-haematoma", "sutures out day 10")).toEqual([
      { code: "window-unusual", values: { given: "sutures out", from: 10, to: 10, usualFrom: 14, usualTo: 21 } },
    ]);
    expect(told("sutured-wound", "sutures out day 14-16")).toMatchObject([{ code: "window-unusual" }]);
  });
});
