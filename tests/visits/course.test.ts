import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { brief, type Case, courseOf, everyDay, noSunday, planOf, run, told } from "./help.js";

const cheek = {
  course: [
    "change every day for 3-5 days, first tomorrow",
    "change every 2-3 days until day 14",
    "maybe closure day 7-14",
  ],
  booked: ["2026-03-03T09:30", "2026-03-04T09:30", "2026-03-05T09:30"],
  hours: noSunday,
};

describe("the dog with the abscess", () => {
  const course = courseOf(cheek);

  // Worked by hand. After the 5th the daily phase ends (next change Sat 7, for Sun 8 is closed), or goes on to Fri 6
  // (next Mon 9), or to Sat 7 (next Mon 9 or Tue 10); each later change is 2-3 days on, never on a Sunday.
  test("tells each change by its number, in a window that holds however the daily phase ends", () => {
    expect(course.visits.map(brief)).toEqual([
      "bandage-change-1 booked 2026-03-03T09:30",
      "bandage-change-2 booked 2026-03-04T09:30",
      "bandage-change-3 booked 2026-03-05T09:30",
      "bandage-change-4 expected 03-06..03-07",
      "closure-1 possible 03-09..03-16 if closure",
      "bandage-change-5 possible 03-07..03-10 unless closure",
      "bandage-change-6 possible 03-09..03-13 unless closure",
      "bandage-change-7 possible 03-11..03-16 unless closure",
      "bandage-change-8 possible 03-13..03-16",
      "bandage-change-9 possible 03-16",
    ]);
  });

  // Fewest: 3 to 5 March, Saturday the 7th, closed on the 9th. Most: never closed, or closed on the last day.
  test("counts", () => {
    expect(course.trips).toEqual({ fewest: 5, likely: 7, most: 9 });
    expect(course.purposes).toEqual([
      { kind: "closure", counts: { fewest: 0, likely: 0, most: 1 } },
      { kind: "bandage-change", counts: { fewest: 4, likely: 7, most: 9 } },
    ]);
    expect(course.ends).toEqual({ earliest: "2026-03-09", latest: "2026-03-16" });
    expect(course.closed.map(({ day }) => day)).toEqual(["2026-03-08", "2026-03-15"]);
  });

  test("nothing is aimed at a closed day", () => {
    for (const { earliest, ideal, latest } of course.visits)
      for (const day of [earliest, ideal, latest]) expect(new Date(`${day}T12:00Z`).getUTCDay()).not.toBe(0);
  });

  test("closing the wound ends the changes of its bandage, said or not, and the sutures wait for it", () => {
    const of = (end: string) =>
      courseOf({
        ...cheek,
        course: [
          "change every day for 3-5 days, first tomorrow",
          `then every 2-3 days until day 14${end}`,
          "maybe closure day 7-14",
          "sutures out 10-14 days after closure",
        ],
      }).visits.map(brief);
    expect(of("")).toEqual(of(" or closure"));
    expect(of("")).toContain("bandage-change-5 possible 03-07..03-10 unless closure");
    expect(of("")).toContain("suture-removal-1 possible 03-19..03-30 if closure");
  });

  test("the closure of one wound leaves the changes of another alone, and those that begin after it", () => {
    const changes = "change every 2 days until day 8";
    const both = courseOf({ course: [[changes], ["closure day 4"]] }).purposes;
    expect(both).toContainEqual({ kind: "bandage-change", counts: { fewest: 4, likely: 4, most: 4 } });
    const after = courseOf({ course: ["closure day 4", "change every 2 days for 4 days, first 2 days after closure"] });
    expect(after.visits.map(brief)).toEqual([
      "closure-1 expected 03-06",
      "bandage-change-1 expected 03-08",
      "bandage-change-2 expected 03-10",
    ]);
  });
});

describe("what comes first", () => {
  test("where a closure may come before the next change, some visit is sure all the same", () => {
    const { visits, first } = courseOf({ course: ["change every 2-3 days until day 6", "maybe closure day 1-3"] });
    expect(visits.map(({ certainty }) => certainty)).not.toContain("expected");
    expect(first).toEqual({
      earliest: "2026-03-03",
      latest: "2026-03-05",
      kinds: [{ kind: "bandage-change" }, { kind: "closure" }],
    });
  });

  // Of the first three days nothing is said.
  test("it is the first day on which a visit may be, and not one before", () => {
    expect(courseOf({ course: ["recheck day 4-7", "injection every 5 days 2 times"] }).first).toEqual({
      earliest: "2026-03-06",
      latest: "2026-03-07",
      kinds: [{ kind: "recheck" }, { kind: "injection" }],
    });
  });

  test("where there may be no visit at all, none is promised", () => {
    expect(courseOf({ course: ["maybe recheck day 3-7"] }).first).toBeNull();
    expect(courseOf({ course: [] }).first).toBeNull();
  });
});

describe("sharing a day", () => {
  test("two single visits that can share a day do", () => {
    const course = courseOf({ course: ["recheck day 10", "sutures out day 10-14"] });
    expect(course.visits.map(brief)).toEqual(["recheck-1 +suture-removal-1 expected 03-12"]);
    expect(course.trips).toEqual({ fewest: 1, likely: 1, most: 2 });
    expect(course.visits[0]?.minutes).toBe(40);
  });

  test("a recheck joins a change only where every day of the change suits it", () => {
    const days = ["change every day for 3 days, first tomorrow", "recheck day 2-4"];
    expect(courseOf({ course: days }).visits.map(brief)).toContain("recheck-1 +bandage-change-3 expected 03-05");
    const perhaps = ["change every 2-3 days until day 14", "recheck day 6"];
    expect(courseOf({ course: perhaps }).visits.map(brief)).toContain("recheck-1 expected 03-08");
  });

  test("a drain comes out when the wound says, so no other visit is tied to it", () => {
    const { visits } = courseOf({ course: ["drain out day 3-5", "recheck day 4", "change every day until drain out"] });
    expect(visits.map(brief)).toContain("drain-removal-1 expected 03-05..03-07");
  });

  test("two wounds are changed on one trip, each counted for itself", () => {
    const course = courseOf({ course: [["change every day for 2 days"], ["change every day for 2-3 days"]] });
    expect(course.visits.map(brief)).toEqual([
      "bandage-change-1 +bandage-change-1 expected 03-03",
      "bandage-change-2 +bandage-change-2 expected 03-04",
      "bandage-change-3-2 possible 03-05",
    ]);
    expect(course.trips).toEqual({ fewest: 2, likely: 3, most: 3 });
  });
});

describe("closed days", () => {
  const daily = (days: string) => ({ course: [`change every day for ${days} days, first tomorrow`], hours: noSunday });

  test("a daily change that must fall on a closed day is asked about and never moved in silence", () => {
    expect(told(daily("7"))).toEqual(["repeat-meets-closed-day 10:16+9"]);
    expect(run(daily("7")).problems[0]).toMatchObject({
      severity: "ask",
      values: { day: { day: "2026-03-08" }, after: { day: "2026-03-09" } },
    });
    const days = ["03-03", "03-04", "03-05", "03-06", "03-07", "03-09"];
    expect(courseOf(daily("7")).visits.map(brief)).toEqual(
      days.map((day, i) => `bandage-change-${i + 1} expected ${day}`),
    );
  });

  test("one that may fall on a closed day is noted", () => {
    expect(run(daily("5-7")).problems).toMatchObject([{ code: "repeat-may-meet-closed-day", severity: "note" }]);
    expect(told(daily("3-5"))).toEqual([]);
  });

  test("a partner clinic stands in, and only where it must", () => {
    const open = [{ open: "10:00", close: "14:00" }];
    const partner = { name: "Lakeside", phone: "+13125550199", address: [], hours: { ...noSunday, sunday: open } };
    const given = { ...daily("7"), clinic: { partner } };
    expect(run(given).problems).toMatchObject([
      { code: "visit-at-partner", severity: "note", values: { day: { day: "2026-03-08" }, partner: "Lakeside" } },
    ]);
    const { visits } = courseOf(given);
    expect(visits.map(({ where }) => where)).toEqual([null, null, null, null, null, "Lakeside", null]);
    const [recheck] = courseOf({ course: ["recheck day 5-7"], hours: noSunday, clinic: { partner } }).visits;
    expect(recheck).toMatchObject({ earliest: "2026-03-07", ideal: "2026-03-07", latest: "2026-03-09", where: null });
  });

  // The owner cannot come on day 4, and we are closed on days 3 and 5: two days at the partner's keep every gap.
  test("a gap is kept, be it for more days at the partner's", () => {
    const partner = { name: "Lakeside", phone: "+13125550199", address: [], hours: everyDay };
    const given = {
      course: ["change every 2 days 3 times, first day 1-2"],
      unavailable: ["2026-03-06"],
      clinic: { partner, closed: ["2026-03-05", "2026-03-07"] },
    };
    expect(courseOf(given).visits.map(({ days, where }) => [...days, where])).toEqual([
      ["2026-03-03", null],
      ["2026-03-05", "Lakeside"],
      ["2026-03-07", "Lakeside"],
    ]);
  });

  test("windows are drawn in to open days", () => {
    expect(courseOf({ course: ["recheck day 6-7"], hours: noSunday }).visits.map(brief)).toEqual([
      "recheck-1 expected 03-09",
    ]);
  });

  test("where one way the wound may go has no day for a visit, it is that visit and that day that are told", () => {
    // Discharged on a Monday: if the changes end on Saturday, the day after is a Sunday.
    const course = ["change every day for 3-5 days, first tomorrow", "recheck 1 day after the last change"];
    const blocked = { at: { line: 11, column: 17 }, values: { day: { day: "2026-03-08" } } };
    expect(run({ course, hours: noSunday }).problems).toMatchObject([
      { ...blocked, code: "closed-day", values: { nearest: { day: "2026-03-09" } } },
    ]);
    const fair = { from: "2026-03-08", to: "2026-03-08", name: "Town fair" };
    expect(run({ course, clinic: { closed: [fair] }, booked: ["2026-03-03 09:00"] }).problems).toEqual([]);
    expect(run({ course, clinic: { closed: [fair] } }).problems).toMatchObject([
      { ...blocked, code: "closed-for", values: { closure: "Town fair", nearest: { day: "2026-03-09" } } },
    ]);
  });

  // Discharged on Monday the 2nd; the changes end on the 5th, 6th or 7th, and the days after count from there.
  test("where two visits must both move, each is told with its closure and the nearest day", () => {
    const fair = { from: "2026-03-08", to: "2026-03-08", name: "Town fair" };
    const changes = "change every day for 3-5 days, first tomorrow";
    const course = [changes, "recheck 3 days after the last change", "sutures out 10 days after the last change"];
    expect(run({ course, clinic: { closed: [fair, "2026-03-15"] } }).problems).toMatchObject([
      { code: "closed-for", at: { line: 11 }, values: { closure: "Town fair", nearest: { day: "2026-03-09" } } },
      { code: "closed-day", at: { line: 12 }, values: { day: { day: "2026-03-15" }, nearest: { day: "2026-03-16" } } },
    ]);
  });

  // Closed on the 15th to the 18th: the closure has its days, but the sutures and the recheck that count from it have none.
  test("it is the visit without a day that is moved, not the one it counts from, and the nearer way of two", () => {
    const works = { from: "2026-03-15", to: "2026-03-18", name: "Building work" };
    const course = ["closure day 3-4", "sutures out 10 days after closure", "recheck 12 days after closure"];
    expect(run({ course, clinic: { closed: [works] } }).problems).toMatchObject([
      { code: "no-open-day-for", at: { line: 11 }, values: { nearest: { day: "2026-03-14" } } },
      { code: "no-open-day-for", at: { line: 12 }, values: { nearest: { day: "2026-03-19" } } },
    ]);
    // After a closure on the 5th or 6th the sutures are due on the 16th or 17th, after all of the work or before it.
    const decided = ["maybe closure day 3-4", "sutures out 11 days after closure", "recheck 4 days after closure"];
    const closed = [{ ...works, to: "2026-03-17" }, "2026-03-09", "2026-03-10"];
    expect(run({ course: decided, clinic: { closed } }).problems).toMatchObject([
      { at: { line: 11 }, values: { nearest: { day: "2026-03-18" } } },
      { at: { line: 12 }, values: { nearest: { day: "2026-03-11" } } },
    ]);
  });

  test("two visits on one day at times that no hour suits: the nearest other day is named", () => {
    const clash = (days: string) => ({
      course: [`recheck ${days}, not after 10:00`, `sutures out ${days}, not before 14:00`],
      unavailable: ["2026-03-13"],
    });
    expect(run(clash("day 10")).problems).toMatchObject([
      { code: "day-against-others", values: { day: { day: "2026-03-12" }, nearest: { day: "2026-03-11" } } },
    ]);
    expect(run(clash("day 10-11")).problems).toMatchObject([
      { code: "window-against-others", values: { to: { day: "2026-03-13" }, nearest: { day: "2026-03-14" } } },
    ]);
  });

  test("where every other day for months is closed as well, it is the course that does not fit", () => {
    const course = ["recheck day 1, not after 10:00", "sutures out day 1, not before 14:00"];
    const shut = (from: string) => ({
      course,
      clinic: { closed: [{ from, to: "2026-12-31", name: "Building work" }] },
    });
    expect(told(shut("2026-03-04"))).toContain("course-fits-no-calendar 1:1+1");
    expect(told(shut("2026-03-05"))).not.toContain("course-fits-no-calendar 1:1+1");
  });

  test.each([["recheck day 10"], ["change every 2 days for 6 days"]])("a visit that can never be: %s", (line) => {
    const never = { code: "no-day-near", severity: "stop" };
    expect(run({ course: [`${line}, not before 22:00`] }).problems).toMatchObject([never]);
    expect(run({ course: [line], unavailable: ["2026-03-03 to 2027-03-03"] }).problems).toMatchObject([never]);
  });

  test("no feasible date names what blocks it and the nearest day that would do", () => {
    expect(run({ course: ["recheck day 6"], hours: noSunday }).problems).toMatchObject([
      { code: "closed-day", values: { day: { day: "2026-03-08" }, nearest: { day: "2026-03-09" } } },
    ]);
    const closed = [{ from: "2026-03-09", to: "2026-03-20", name: "Building work" }];
    expect(run({ course: ["recheck day 8-10"], clinic: { closed } }).problems).toMatchObject([
      {
        code: "no-open-day-for",
        severity: "stop",
        values: { closure: "Building work", nearest: { day: "2026-03-08" } },
      },
    ]);
    expect(run({ course: ["recheck day 3"], unavailable: ["2026-03-05"] }).problems).toMatchObject([
      { code: "owner-cannot-come", values: { nearest: { day: "2026-03-06" } } },
    ]);
    // Open from 9 to 13 on the Saturday, which is day 5, and closed on the Sunday.
    expect(run({ course: ["recheck day 5, not before 14:00"], hours: noSunday }).problems).toMatchObject([
      { code: "no-time-in-slot", severity: "stop", values: { nearest: { day: "2026-03-06" } } },
    ]);
  });

  const window = (given: Partial<Case>) => courseOf({ course: ["recheck day 3-5"], ...given }).visits.map(brief);

  // The clinic is open 8 to 18, sees the last patient at 17:30, and a recheck takes 20 minutes.
  test.each([
    [["2026-03-06", "2026-03-05"], "03-07"],
    [["2026-03-05 to 2026-03-06"], "03-07"],
    [["thursdays", "every Friday"], "03-07"],
    [["2026-03-05 06:00-17:30"], "03-05..03-07"],
    [["2026-03-05 06:00-17:31"], "03-06..03-07"],
    [["2026-03-05 08:19-18:00"], "03-06..03-07"],
    [["2026-03-05 08:20-18:00"], "03-05..03-07"],
    [["saturdays 08:00-12:00, 12:20-18:00"], "03-05..03-07"],
    [["saturdays 08:00-12:00, 12:19-18:00"], "03-05..03-06"],
  ])("the owner's days and hours are avoided: %j", (unavailable, days) => {
    expect(window({ unavailable })).toEqual([`recheck-1 expected ${days}`]);
  });

  test.each([
    ["recheck day 3-5, not before 12:31", "03-05..03-06"],
    ["recheck day 3-5, not before 12:30", "03-05..03-07"],
    ["recheck day 3-5, not after 08:30", "03-05..03-06"],
    ["recheck day 3-5, not after 09:00", "03-05..03-07"],
  ])("a visit has times of day: %s, where Saturday is 9 to 13", (line, days) => {
    expect(window({ course: [line], hours: noSunday })).toEqual([`recheck-1 expected ${days}`]);
  });

  test("two visits at times of day that no hour suits are two trips", () => {
    const course = ["recheck day 3-4, not after 10:00", "sutures out day 3-4, not before 14:00"];
    expect(courseOf({ course }).trips).toEqual({ fewest: 2, likely: 2, most: 2 });
    expect(courseOf({ course: course.map((line) => line.split(",", 1)[0] ?? "") }).trips.likely).toBe(1);
  });

  test("the clinician's days count for the visits they alone can do", () => {
    const haddad = { name: "Dr. Haddad", days: ["friday" as const, "saturday" as const], away: ["2026-03-07"] };
    const given = (sees?: string[]) => ({
      clinician: "Dr. Haddad",
      clinic: { clinicians: [{ ...haddad, ...(sees ? { sees } : {}) }] },
    });
    expect(window(given())).toEqual(["recheck-1 expected 03-06"]);
    expect(window(given(["closure"]))).toEqual(["recheck-1 expected 03-05..03-07"]);
    expect(window({ ...given(), clinician: "Dr. Adeyemi" })).toEqual(["recheck-1 expected 03-05..03-07"]);
    expect(run({ ...given(), course: ["recheck day 3"] }).problems).toMatchObject([
      { code: "clinician-away", values: { clinician: "Dr. Haddad", nearest: { day: "2026-03-06" } } },
    ]);
    expect(told({ ...given(), clinician: "Dr. Hadad", course: [] })).toEqual(["clinician-unknown 1:1+1"]);
    expect(told({ ...given(["clousre"]), course: [] })).toEqual(["visit-kind-unknown 1:1+1"]);
  });

  test("a daily change on a day the owner cannot come is asked about", () => {
    const daily = { course: ["change every day for 4 days, first tomorrow"], unavailable: ["2026-03-04"] };
    expect(run(daily).problems).toMatchObject([{ code: "repeat-meets-absence", severity: "ask" }]);
  });

  test("one that may come on such a day is noted", () => {
    const daily = { course: ["change every day for 3-5 days, first tomorrow"], unavailable: ["2026-03-06"] };
    expect(run(daily).problems).toMatchObject([
      {
        code: "repeat-may-meet-absence",
        severity: "note",
        values: { day: { day: "2026-03-06" }, after: { day: "2026-03-07" } },
      },
    ]);
  });
});

describe("appointments", () => {
  const book = (...booked: string[]) => told({ course: ["recheck day 3-7"], hours: noSunday, booked });

  test.each([
    ["2026-03-06T09:30", []],
    ["2026-03-08T09:30", ["closed-day 11:5+16"]],
    ["2026-03-06T07:00", ["booked-outside-hours 11:5+16"]],
    ["2026-03-06T18:00", ["booked-outside-hours 11:5+16"]],
    ["2026-03-06T17:30", []],
    ["2026-03-06T17:31", ["booked-after-last-appointment 11:5+16"]],
    ["2026-03-07T12:45", ["booked-after-last-appointment 11:5+16"]],
    ["2026-03-02T09:00", ["date-past 11:5+16"]],
    ["2026-03-04T09:30", ["booked-not-in-course 11:5+16"]],
    ["2026-03-02T17:00", ["booked-not-in-course 11:5+16"]],
  ])("%s", (at, expected) => {
    expect(book(at)).toEqual(expected);
  });

  test("a booked visit is firm, and holds the rest to it", () => {
    const { visits, trips } = courseOf({
      course: ["recheck day 3-7", "sutures out day 5-9"],
      booked: ["2026-03-07T10:00"],
    });
    expect(visits.map(brief)).toEqual(["recheck-1 +suture-removal-1 booked 2026-03-07T10:00"]);
    expect(trips).toEqual({ fewest: 1, likely: 1, most: 1 });
  });

  test("what is booked ahead leaves honest windows before it", () => {
    const { visits } = courseOf({ course: ["change every 2-3 days until day 10"], booked: ["2026-03-08T10:00"] });
    expect(visits.map(brief)).toEqual([
      "bandage-change-1 expected 03-04..03-05",
      "bandage-change-2 possible 03-06",
      "bandage-change-3 booked 2026-03-08T10:00",
      "bandage-change-4 expected 03-10..03-11",
      "bandage-change-5 possible 03-12",
    ]);
  });

  test("appointments at the wrong time of day, or without the clinician, are asked about", () => {
    const slot = { course: ["recheck day 3, not before 10:00, not after 15:00"] };
    expect(told({ ...slot, booked: ["2026-03-05T09:30"] })).toEqual(["booked-too-early 11:5+16"]);
    expect(told({ ...slot, booked: ["2026-03-05T15:01"] })).toEqual(["booked-too-late 11:5+16"]);
    expect(told({ ...slot, booked: ["2026-03-05T15:00"] })).toEqual([]);
    const clinicians = [{ name: "Dr. Haddad", days: ["friday" as const], away: [] }];
    const given = { course: ["recheck day 3-5"], clinician: "Dr. Haddad", clinic: { clinicians } };
    expect(told({ ...given, booked: ["2026-03-05T09:30"] })).toEqual(["booked-without-clinician 11:5+16"]);
    expect(told({ ...given, booked: ["2026-03-06T09:30"] })).toEqual([]);
  });

  // A recheck takes 20 minutes.
  test.each([
    ["2026-03-05T08:41", true],
    ["2026-03-05T08:40", false],
    ["2026-03-05T09:59", true],
    ["2026-03-05T10:00", false],
  ])("an appointment at %s touches the hours in which the owner cannot come: %s", (at, touches) => {
    const given = { course: ["recheck day 3-5"], unavailable: ["2026-03-05 09:00-10:00"], booked: [at] };
    expect(told(given)).toEqual(touches ? ["booked-when-owner-cannot-come 11:5+16"] : []);
  });

  test("appointments that break a gap, twice on a day, or for nothing", () => {
    const changes = { course: ["change every 3 days until day 9"] };
    expect(told({ ...changes, booked: ["2026-03-05T10:00", "2026-03-06T10:00"] })).toEqual([
      "booked-not-in-course 12:5+16",
    ]);
    const loose = { course: ["change every 2-3 days until day 9"] };
    expect(told({ ...loose, booked: ["2026-03-04T10:00", "2026-03-05T10:00"] })).toEqual([
      "booked-against-course 12:5+16",
    ]);
    expect(book("2026-03-06T09:30", "2026-03-06T11:00")).toEqual(["booked-twice 12:5+16"]);
    expect(told({ course: [], booked: ["2026-03-06T09:30"] })).toEqual(["booked-without-course 10:5+16"]);
  });
});

describe("days counted from the last of several visits", () => {
  test("in a window that holds however many there are", () => {
    const { visits, trips } = courseOf({
      course: ["change every day for 3-5 days, first tomorrow", "recheck 3 days after the last change"],
    });
    expect(visits.map(brief)).toContain("recheck-1 expected 03-08..03-10");
    expect(trips).toEqual({ fewest: 4, likely: 5, most: 6 });
  });

  test("of all lines that follow each other, whatever ends them", () => {
    const course = [
      "change every day for 2 days, first tomorrow",
      "then every 2 days until drain out",
      "drain out day 3-5",
      "recheck 4-5 days after last change",
    ];
    expect(courseOf({ course }).visits.map(brief)).toContain("recheck-1 expected 03-08..03-11");
  });
});

test("months, years, leap days and clock changes are only days", () => {
  const days = (discharged: string, line = "recheck day 1-2") =>
    courseOf({ course: [line], discharged }).visits.map(({ earliest, latest }) => [earliest, latest]);
  expect(days("2028-02-28T10:00")).toEqual([["2028-02-29", "2028-03-01"]]);
  expect(days("2026-12-30T10:00")).toEqual([["2026-12-31", "2027-01-01"]]);
  expect(days("2026-03-07T23:30")).toEqual([["2026-03-08", "2026-03-09"]]);
  expect(days("2026-10-31T10:00", "recheck day 2")).toEqual([["2026-11-02", "2026-11-02"]]);
});

test("a plan without a course has no visits", () => {
  const { value } = run({ course: [] });
  expect(value).toEqual({
    first: null,
    visits: [],
    trips: { fewest: 0, likely: 0, most: 0 },
    purposes: [],
    ends: null,
    closed: [],
  });
  expect(planOf({ course: [] }).care).toHaveLength(1);
});

test("widening a range never narrows a total", () => {
  const span = (least: number) => fc.tuple(fc.integer({ min: least, max: 4 }), fc.nat(2), fc.nat(1), fc.nat(2));
  const text = (from: number, to: number) => `${from}-${to}`;
  fc.assert(
    fc.property(span(2), span(1), span(3), fc.boolean(), (length, gap, window, closes) => {
      const course = ([a, w]: [number, number], [b, x]: [number, number], [c, y]: [number, number]) => [
        `change every day for ${text(a, a + w)} days`,
        `then every ${text(b, b + x)} days until day 12`,
        `recheck day ${text(c, c + y)}`,
        `${closes ? "maybe " : ""}closure day ${text(c + 2, c + 2 + y)}`,
      ];
      const wider = ([from, wide, before, after]: readonly [number, number, number, number]): [number, number] => {
        const earlier = Math.min(before, from - 1);
        return [from - earlier, wide + earlier + after];
      };
      const narrow = courseOf({ course: course([length[0], length[1]], [gap[0], gap[1]], [window[0], window[1]]) });
      const wide = courseOf({ course: course(wider(length), wider(gap), wider(window)) });
      expect(wide.trips.fewest).toBeLessThanOrEqual(narrow.trips.fewest);
      expect(wide.trips.most).toBeGreaterThanOrEqual(narrow.trips.most);
      for (const { trips } of [narrow, wide]) {
        expect(trips.likely).toBeGreaterThanOrEqual(trips.fewest);
        expect(trips.likely).toBeLessThanOrEqual(trips.most);
      }
      expect((wide.ends?.earliest ?? "") <= (narrow.ends?.earliest ?? "")).toBe(true);
      expect((wide.ends?.latest ?? "") >= (narrow.ends?.latest ?? "")).toBe(true);
    }),
    { numRuns: 100 },
  );
});
