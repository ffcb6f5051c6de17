import { describe, expect, test } from "vitest";
import { computeVisits } from "../../src/compute/visits/visits.js";
import { brief, type Case, courseOf, kinds, noSunday, planOf, run } from "./help.js";

/** Code, values and line of each problem of a course. Courses begin at line 10. */
const all = (...course: string[]) =>
  run({ course }).problems.map(({ code, values, at }) => ({ code, values, line: at.line }));

// Discharged on Monday 2 March, so that day 1 is the 3rd.
describe("a single visit that says no day", () => {
  test("is asked for one, whatever else the course has", () => {
    expect(all("recheck day 5", "x-ray")).toEqual([
      { code: "visit-when-missing", values: { given: "x-ray" }, line: 11 },
    ]);
  });

  test("if only a decision, it needs a course to fall into, be it of one day", () => {
    expect(all("maybe closure")).toEqual([{ code: "visit-when-missing", values: { given: "closure" }, line: 10 }]);
    expect(courseOf({ course: ["x-ray tomorrow", "maybe recheck"] }).visits.map(brief)).toEqual([
      "x-ray-1 expected 03-03",
      "recheck-1 possible 03-03 if recheck",
    ]);
  });
});

describe("visits that wait for each other", () => {
  test("are named, the repeating ones as well", () => {
    expect(all("change every day until drain out", "drain out 2 days after the last change")).toEqual([
      { code: "anchor-circle", values: { given: "drain out, change" }, line: 11 },
    ]);
  });

  test("are told, and not what waits for them or ends with them", () => {
    const circle = ["closure 3 days after recheck", "recheck 3 days after closure"];
    const values = { given: "closure, recheck" };
    for (const more of ["sutures out 10 days after closure", "change every day for 3 days"])
      expect(all(...circle, more)).toEqual([
        { code: "anchor-circle", values, line: 10 },
        { code: "anchor-circle", values, line: 11 },
      ]);
  });

  test("are told where they are what ends a repeating visit", () => {
    const closure = ["closure 3 days after recheck", "recheck 3 days after closure", "change every day until closure"];
    expect(all(...closure).map(({ code, line }) => [code, line])).toEqual([
      ["anchor-circle", 10],
      ["anchor-circle", 11],
    ]);
    expect(all("flush every day until x-ray, first 2 days after x-ray", "x-ray 3 days after the last flush")).toEqual([
      { code: "anchor-circle", values: { given: "x-ray, flush" }, line: 11 },
    ]);
  });
});

test("of what may never end a repeating visit the words that name it are told", () => {
  expect(all("recheck day 3", "maybe closure day 7", "change every day until closure")).toEqual([
    { code: "end-uncertain", values: { given: "closure" }, line: 12 },
  ]);
});

// A bandage is changed until it comes off, but what counts from the last change comes when the changes are over.
describe("what counts from the last change does not end the changes", () => {
  const changes = "change every day for 3-5 days, first tomorrow";

  test.each([
    [[changes, "closure 2 days after the last change"], "closure-1 expected 03-07..03-09", 5],
    [[changes, "maybe closure 2 days after the last change"], "closure-1 possible 03-07..03-09 if closure", 5],
    [
      ["change every 3 days for 9 days", "bandage off 3 days after the last change"],
      "bandage-removal-1 expected 03-14",
      3,
    ],
    [
      [changes, "recheck 1 day after the last change", "bandage off 2 days after recheck"],
      "bandage-removal-1 expected 03-08..03-10",
      5,
    ],
    [
      [
        changes,
        "flush every day 2 times, first 1 day after recheck",
        "recheck 1 day after the last change",
        "closure 1 day after the last flush",
      ],
      "closure-1 expected 03-09..03-11",
      5,
    ],
  ])("%j", (course, visit, most) => {
    const { visits, purposes } = courseOf({ course });
    expect(visits.map(brief)).toContain(visit);
    expect(purposes.find(({ kind }) => kind === "bandage-change")?.counts.most).toBe(most);
  });

  // Changes on days 1 to 3, a flush on days 2 and 4 and none on day 6: closed on day 5.
  test("it ends all else that is done to an open wound", () => {
    const course = [
      "change every day for 3 days",
      "flush every 2 days until day 10",
      "closure 2 days after the last change",
    ];
    expect(courseOf({ course }).visits.map(brief)).toEqual([
      "bandage-change-1 expected 03-03",
      "bandage-change-2 +wound-flush-1 expected 03-04",
      "bandage-change-3 expected 03-05",
      "wound-flush-2 expected 03-06",
      "closure-1 expected 03-07",
    ]);
  });
});

describe("where a whole course cannot be worked out", () => {
  test("its place in the plan is told", () => {
    const plan = planOf({ course: Array.from({ length: 20 }, () => "maybe recheck day 3-9") });
    const care = { file: "plan.yaml", line: 7, column: 1, length: 4 };
    expect(computeVisits({ ...plan, places: { ...plan.places, care } }, kinds).problems).toMatchObject([
      { code: "course-too-open", at: care },
    ]);
  });

  // Day 6 is a Sunday, on which the clinic is closed: that is told once it is known whom the visits wait for.
  test("because the clinic's profile cannot be understood, the profile is told alone", () => {
    const clinic = (sees: string) => ({
      clinicians: [{ name: "Dr. Haddad", days: ["friday" as const], sees: [sees], away: [] }],
    });
    const codes = (sees: string) =>
      run({ course: ["recheck day 6"], hours: noSunday, clinic: clinic(sees) }).problems.map(({ code }) => code);
    expect(codes("clousre")).toEqual(["visit-kind-unknown"]);
    expect(codes("closure")).toEqual(["closed-day"]);
  });
});

// Twenty-eight ways, of which only the longest has no day: the owner cannot come on the afternoon of day 31.
test("the one way of many that has no day for a visit is told with that visit", () => {
  const given: Case = {
    course: ["change every day for 3-30 days, first tomorrow", "recheck 1 day after the last change, not before 14:00"],
    unavailable: ["2026-04-02 12:00-20:00"],
  };
  expect(run(given).problems).toMatchObject([
    {
      code: "owner-cannot-come",
      at: { line: 11 },
      values: { day: { day: "2026-04-02" }, nearest: { day: "2026-04-03" } },
    },
  ]);
});

describe("a course is not too open for", () => {
  // Fourteen days for each of five visits, and up to seven flushes of the wound until it is closed.
  test("visits of which each may be on any day of two weeks", () => {
    const visits = ["recheck", "x-ray", "blood test", "closure", "injection"].map((name) => `${name} day 1-14`);
    const { trips } = courseOf({ course: [...visits, "flush every 2 days until day 30"] });
    expect(trips).toEqual({ fewest: 1, likely: 1, most: 11 });
  });

  test("wounds that may each be closed on any day of two weeks, with an x-ray after that", () => {
    const wounds = Array.from({ length: 4 }, () => ["closure day 3-14", "x-ray 2 days after closure"]);
    expect(courseOf({ course: wounds }).trips).toEqual({ fewest: 2, likely: 2, most: 8 });
  });
});
