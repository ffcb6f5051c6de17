import { describe, expect, test } from "vitest";
import type { Plan } from "#plan/plan.js";
import { computeVisits } from "../../src/compute/visits/visits.js";
import { brief, type Case, courseOf, everyDay, kinds, noSunday, planOf, run, told } from "./help.js";

/** The one problem of a plan: its code, its values, and the line it points at. Courses begin at line 10. */
function only(given: Case) {
  const { problems } = run(given);
  expect(problems).toHaveLength(1);
  return problems.map(({ code, values, at }) => ({ code, values, line: at.line }))[0];
}

// Discharged on Monday 2 March 2026 at 16:30, so that day N is March 2 + N.
describe("what is said of an appointment that cannot be kept", () => {
  const recheck = { course: ["recheck day 3-7"], hours: noSunday };

  test.each([
    [
      "on the day of discharge, before it",
      ["2026-03-02T09:00"],
      "date-past",
      { given: { day: "2026-03-02" }, discharged: { day: "2026-03-02" } },
    ],
    [
      "long before discharge",
      ["2026-02-27T09:00"],
      "date-past",
      { given: { day: "2026-02-27" }, discharged: { day: "2026-03-02" } },
    ],
    [
      "at the minute of discharge",
      ["2026-03-02T16:30"],
      "date-past",
      { given: { day: "2026-03-02" }, discharged: { day: "2026-03-02" } },
    ],
    ["twice on a day", ["2026-03-06T09:30", "2026-03-06T11:00"], "booked-twice", { day: { day: "2026-03-06" } }],
    // Open 8 to 18 on a Friday and 9 to 13 on a Saturday; the last appointment is half an hour before closing.
    [
      "before opening",
      ["2026-03-06T07:00"],
      "booked-outside-hours",
      { given: "2026-03-06 07:00", open: "08:00-18:00" },
    ],
    [
      "in the last half-hour",
      ["2026-03-07T12:45"],
      "booked-after-last-appointment",
      { given: "2026-03-07 12:45", last: "12:30" },
    ],
  ])("%s", (_, booked, code, values) => {
    expect(only({ ...recheck, booked })).toEqual({ code, values, line: 10 + booked.length });
  });

  test("the day on which the owner cannot come is named", () => {
    const given = { course: ["recheck day 3-5"], unavailable: ["2026-03-05"], booked: ["2026-03-05T09:30"] };
    expect(only(given)).toMatchObject({
      code: "booked-when-owner-cannot-come",
      values: { day: { day: "2026-03-05" } },
    });
  });

  test("where no line says what for, the day is named", () => {
    expect(only({ course: [], booked: ["2026-03-06T09:30"] })).toMatchObject({
      code: "booked-without-course",
      values: { day: { day: "2026-03-06" } },
    });
  });

  // The course may need somebody on days 3, 4, 10 and 11.
  test.each([
    ["2026-03-03", "2026-03-05"],
    ["2026-03-07", "2026-03-06"],
    ["2026-03-11", "2026-03-12"],
    ["2026-03-20", "2026-03-13"],
  ])("%s is of no use to the course, and %s is the nearest day that is", (day, nearest) => {
    expect(only({ course: ["recheck day 3-4", "x-ray day 10-11"], booked: [`${day}T10:00`] })).toMatchObject({
      code: "booked-not-in-course",
      values: { day: { day }, nearest: { day: nearest } },
    });
  });

  // A change every 2 or 3 days: one on day 3 or one on day 2, never both, in whatever order they are written.
  test.each([
    [["2026-03-04T10:00", "2026-03-05T10:00"], 12],
    [["2026-03-05T10:00", "2026-03-04T10:00"], 11],
  ])("of two that clash it is the later day that is told: %j", (booked, line) => {
    expect(only({ course: ["change every 2-3 days until day 9"], booked })).toEqual({
      code: "booked-against-course",
      values: { day: { day: "2026-03-05" } },
      line,
    });
  });
});

describe("the times of day a line allows", () => {
  const slot = { course: ["recheck day 3, not before 10:00, not after 15:00"] };

  test.each([
    ["2026-03-05T09:59", "booked-too-early", { given: "2026-03-05 09:59", slot: "10:00" }],
    ["2026-03-05T15:01", "booked-too-late", { given: "2026-03-05 15:01", slot: "15:00" }],
  ])("%s: %s", (at, code, values) => {
    expect(only({ ...slot, booked: [at] })).toEqual({ code, values, line: 11 });
  });

  test.each(["2026-03-05T10:00", "2026-03-05T15:00"])("%s is still within them", (at) => {
    expect(told({ ...slot, booked: [at] })).toEqual([]);
  });

  test("those of a repeating line are asked after too, whatever single visits stand beside it", () => {
    const course = ["recheck day 6", "change every day for 3 days, first tomorrow, not before 10:00"];
    expect(only({ course, booked: ["2026-03-04T09:30"] })).toMatchObject({
      code: "booked-too-early",
      values: { slot: "10:00" },
    });
  });
});

describe("an appointment without the clinician", () => {
  const clinicians = [{ name: "Dr. Haddad", days: ["friday" as const], away: [] }];
  const onThursday = (sees?: string[]) => ({
    course: ["recheck day 3-5"],
    clinician: "Dr. Haddad",
    clinic: { clinicians: clinicians.map((one) => ({ ...one, ...(sees ? { sees } : {}) })) },
    booked: ["2026-03-05T09:30"],
  });

  test("is told with their name and the day", () => {
    expect(only(onThursday())).toMatchObject({
      code: "booked-without-clinician",
      values: { day: { day: "2026-03-05" }, clinician: "Dr. Haddad" },
    });
  });

  test("is not told of a visit that others may do", () => {
    expect(told(onThursday(["closure"]))).toEqual([]);
  });
});

describe("a single visit on a booked day", () => {
  const onDay = (given: Case, day: string) =>
    courseOf(given)
      .visits.filter(({ at }) => at?.startsWith(day))
      .flatMap(({ purposes }) => purposes.map(({ kind }) => kind))
      .sort();

  // Day 6 is the last day of both windows.
  test("two that can both be there are, on one trip", () => {
    const course = courseOf({ course: ["recheck day 3-6", "x-ray day 5-6"], booked: ["2026-03-08T10:00"] });
    expect(course.visits.map(brief)).toEqual(["recheck-1 +x-ray-1 booked 2026-03-08T10:00"]);
    expect(course.trips).toEqual({ fewest: 1, likely: 1, most: 1 });
  });

  const daily = "change every day for 3-5 days, first tomorrow";

  test("it joins the change that is there", () => {
    const given = { course: [daily, "recheck day 2-4"], booked: ["2026-03-05T10:00"] };
    expect(onDay(given, "2026-03-05")).toEqual(["bandage-change", "recheck"]);
  });

  // Day 5 is booked: the changes end on day 4, and the recheck is on day 5; or on day 5, and the recheck is on day 6.
  test("it is given its day for good only where it can be there however the wound goes", () => {
    const course = [daily, "recheck 1 day after the last change", "x-ray day 2-4"];
    const given = { course, booked: ["2026-03-05T10:00", "2026-03-07T10:00"] };
    expect(onDay(given, "2026-03-05")).toEqual(["bandage-change", "x-ray"]);
    const { visits, purposes } = courseOf(given);
    expect(visits.map(brief)).toContain("recheck-1 expected 03-07..03-08");
    expect(visits.map(brief)).toContain("bandage-change-5 booked 2026-03-07T10:00");
    expect(purposes).toContainEqual({ kind: "bandage-change", counts: { fewest: 4, likely: 4, most: 5 } });
  });

  // Only if the changes go on to day 5 could the recheck be on another day than the booked one.
  test("a visit that a booked day is for, should the wound heal sooner, is on it however the wound goes", () => {
    const { trips } = courseOf({ course: [daily, "recheck day 4-6"], booked: ["2026-03-07T10:00"] });
    expect(trips).toEqual({ fewest: 4, likely: 5, most: 5 });
  });

  // If the changes end on day 3, somebody must still come on day 4: the recheck or the x-ray.
  test("it is not given its day for good where a booked day would then have no visit should the wound heal sooner", () => {
    const course = [daily, "recheck day 2-4", "x-ray day 2-4"];
    const { purposes } = courseOf({ course, booked: ["2026-03-05T10:00", "2026-03-06T10:00"] });
    expect(purposes).toContainEqual({ kind: "bandage-change", counts: { fewest: 3, likely: 4, most: 5 } });
  });
});

// The first change is on day 1 and the next on day 3 at the soonest.
test("a course that can go in too many ways is refused, be it for an appointment on a day without a visit", () => {
  const course = ["change every 2-9 days for 2-300 days, first tomorrow"];
  const { value, problems } = run({ course, booked: ["2026-03-04T10:00"] });
  expect(value).toBeNull();
  expect(problems.map(({ severity }) => severity)).toContain("stop");
});

// Discharged on Monday, March 2. Ten days before day 14 is day 4, a Friday; the fourth change is on day 4, and the day after is day 5.
test.each([
  [["closure day 3-5", "sutures out 10 days after closure"], "2026-03-16T10:00", "closure-1 expected 03-06"],
  [
    ["change every day for 3-4 days, first tomorrow", "recheck 1 day after the last change"],
    "2026-03-07T10:00",
    "bandage-change-4 expected 03-06",
  ],
])("a booked visit that counts from another leaves that one only the days it can count from: %s", (course, at, other) =>
  expect(courseOf({ course, booked: [at] }).visits.map(brief)).toContain(other),
);

test("a course too open to be worked out is told as that, whatever is booked", () => {
  const course = ["change every 2-9 days for 2-300 days, first tomorrow"];
  for (const booked of [[], ["2026-03-04T10:00"]])
    expect(run({ course, booked }).problems.map(({ code }) => code)).toEqual(["gap-unusual", "course-too-open"]);
});

describe("on a day that a partner clinic stands in, our clinician is not there", () => {
  const partner = { name: "Lakeside", phone: "+13125550199", address: [], hours: everyDay };
  const clinic = {
    partner,
    closed: [{ from: "2026-03-05", to: "2026-03-05" }],
    clinicians: [{ name: "Dr. Noor Haddad", days: ["thursday", "friday"], away: [] }],
  } as Partial<Plan["clinic"]>;
  const clinician = "Dr. Noor Haddad";

  test("a visit that waits for them is not there", () =>
    expect(run({ course: ["recheck day 3"], clinic, clinician }).problems.map(({ code }) => code)).toEqual([
      "clinician-away",
    ]));

  test("an appointment without them is asked about", () =>
    expect(
      run({ course: ["recheck day 3-4"], booked: ["2026-03-05T10:00"], clinic, clinician }).problems.map(
        ({ code }) => code,
      ),
    ).toContain("booked-without-clinician"));
});

// Discharged on Monday, March 2: day 5 is the 7th, day 7 the 9th.
describe("what may be done on a booked day, and is not in the likeliest course, is told for itself", () => {
  test.each([
    [
      "a decision beside a visit that is sure",
      [["x-ray day 5", "maybe blood test day 5"]],
      "2026-03-07",
      ["x-ray-1 booked 2026-03-07T10:00", "blood-test-1 possible 03-07 if blood-test"],
    ],
    [
      "a closure in place of the change",
      [["maybe closure day 7", "change every day for 7 days"]],
      "2026-03-09",
      ["closure-1 possible 03-09 if closure", "bandage-change-7 booked 2026-03-09T10:00 unless closure"],
    ],
    [
      "one of two decisions",
      [["maybe closure day 7", "maybe blood test day 7"]],
      "2026-03-09",
      ["closure-1 possible 03-09 if closure", "blood-test-1 booked 2026-03-09T10:00 if blood-test"],
    ],
    [
      "the change of another wound, which may have healed by then",
      [["change every day for 5 days"], ["change every day for 3-5 days"]],
      "2026-03-07",
      ["bandage-change-5 booked 2026-03-07T10:00", "bandage-change-5-2 possible 03-07"],
    ],
  ])("%s", (_, course, day, expected) => {
    const { visits } = courseOf({ course, booked: [`${day}T10:00`] });
    expect(visits.filter(({ latest }) => latest === day).map(brief)).toEqual(expected);
  });
});

describe("a line that the others leave no day", () => {
  const course = ["closure day 5-6", "change every 2 days until day 12, first day 6"];

  test("is asked about, whatever is booked", () => {
    expect(told({ course, booked: ["2026-03-07T10:00"] })).toEqual(["repeat-never-comes 11:9+6"]);
  });

  // Closed on day 5, the change of day 6 is not to be; on day 7 it would be.
  test("only because of an appointment is not asked about", () => {
    const loose = ["closure day 5-7", ...course.slice(1)];
    expect(told({ course: loose, booked: ["2026-03-07T10:00"] })).toEqual([]);
    expect(told({ course: loose })).toEqual([]);
  });

  test("because of a visit that was is not asked about", () => {
    expect(computeVisits({ ...planOf({ course }), revision: 1 }, kinds).problems).toEqual([]);
    expect(told({ course })).toEqual(["repeat-never-comes 11:9+6"]);
  });
});

// No hour suits both visits of day 10, whatever is booked on day 5.
test("where the course has no day of its own, that is told and not its appointment", () => {
  const course = ["recheck day 10, not after 10:00", "x-ray day 10, not before 14:00"];
  expect(only({ course, booked: ["2026-03-07T10:00"] })).toMatchObject({ code: "day-against-others", line: 11 });
});
