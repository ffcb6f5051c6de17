import { describe, expect, test } from "vitest";
import { parseLine } from "../../src/compute/visits/language/parse-line.js";
import { computeVisits } from "../../src/compute/visits/visits.js";
import { kinds, planOf, run } from "./help.js";

const change = kinds.find(({ id }) => id === "bandage-change") ?? null;
const place = { file: "plan.yaml", line: 14, column: 9, length: 60 };

function read(text: string, discharged = "2026-03-02") {
  const { value, problems } = parseLine(text, 0, place, { kinds, discharged, going: change });
  if (!value) return problems.map(({ code }) => code).join();
  const { kind, maybe } = value;
  const said = { kind: kind.value.id, ...(maybe ? { maybe } : {}) };
  const days = ({ from, to }: { from: number; to: number }) => (from === to ? from : [from, to]);
  if (!value.repeats)
    return {
      ...said,
      ...(value.when ? { when: days(value.when.span.value) } : {}),
      ...(value.when?.after ? { after: value.when.after.value.id } : {}),
    };
  const { limit, until } = value.end;
  return {
    ...said,
    every: days(value.gap.value),
    ...(value.first ? { first: days(value.first.span.value) } : {}),
    ...(limit ? { [limit.kind]: days(limit.span.value) } : {}),
    ...(until ? { until: until.value === "bandaged" ? "bandaged" : until.value.id } : {}),
  };
}

describe("what a clinician may write", () => {
  test.each([
    ["change every day for 3-5 days, first tomorrow", { kind: "bandage-change", every: 1, first: 1, days: [3, 5] }],
    [
      "Change bandage daily for 3 to 5 days starting day 2",
      { kind: "bandage-change", every: 1, first: 2, days: [3, 5] },
    ],
    ["change every 2–3 days until day 14", { kind: "bandage-change", every: [2, 3], day: 14 }],
    ["then every 2-3 days until day 14", { kind: "bandage-change", every: [2, 3], day: 14 }],
    ["change every other day 4-6 times", { kind: "bandage-change", every: 2, times: [4, 6] }],
    ["change twice a week for 2 weeks", { kind: "bandage-change", every: [3, 4], days: 14 }],
    ["change every day until drain out", { kind: "bandage-change", every: 1, until: "drain-removal" }],
    ["change every 2 days until day 14 or closure", { kind: "bandage-change", every: 2, day: 14, until: "closure" }],
    [
      "change every 2 days until day 14 or until closure",
      { kind: "bandage-change", every: 2, day: 14, until: "closure" },
    ],
    ["change every two days while bandaged", { kind: "bandage-change", every: 2, until: "bandaged" }],
    ["recheck day 10", { kind: "recheck", when: 10 }],
    ["recheck days 3-5", { kind: "recheck", when: [3, 5] }],
    ["recheck on 2026-03-12", { kind: "recheck", when: 10 }],
    ["recheck between 2026-03-12 and 2026-03-14", { kind: "recheck", when: [10, 12] }],
    ["re-check tomorrow", { kind: "recheck", when: 1 }],
    ["wound check in 2 weeks", { kind: "recheck", when: 14 }],
    ["drain out day 3-5", { kind: "drain-removal", when: [3, 5] }],
    ["maybe closure day 7-14", { kind: "closure", maybe: true, when: [7, 14] }],
    ["maybe delayed closure", { kind: "closure", maybe: true }],
    ["blood test day 7, if needed", { kind: "blood-test", maybe: true, when: 7 }],
    ["sutures out 10-14 days after closure", { kind: "suture-removal", when: [10, 14], after: "closure" }],
    ["sutures out 10-14 days after surgery", { kind: "suture-removal", when: [10, 14] }],
    ["x-ray in 4 weeks", { kind: "x-ray", when: 28 }],
    ["perhaps closure day 7", { kind: "closure", maybe: true, when: 7 }],
    ["possibly closure day 7", { kind: "closure", maybe: true, when: 7 }],
    ["recheck day 3 as needed", { kind: "recheck", maybe: true, when: 3 }],
    ["change every day; for 3 days. then first day 2", { kind: "bandage-change", every: 1, first: 2, days: 3 }],
    ["change daily until day 9 till closure", { kind: "bandage-change", every: 1, day: 9, until: "closure" }],
    ["change daily till day 9 or till closure", { kind: "bandage-change", every: 1, day: 9, until: "closure" }],
    ["change weekly until day 20 start day 5", { kind: "bandage-change", every: 7, day: 20, first: 5 }],
    ["change weekly until day 20 from day 5", { kind: "bandage-change", every: 7, day: 20, first: 5 }],
    ["change once a day for 3 days", { kind: "bandage-change", every: 1, days: 3 }],
    ["change once a week for 3 weeks", { kind: "bandage-change", every: 7, days: 21 }],
    ["change every week for 3 weeks", { kind: "bandage-change", every: 7, days: 21 }],
    ["change every other week for 6 weeks", { kind: "bandage-change", every: 14, days: 42 }],
    ["then daily for 3 days", { kind: "bandage-change", every: 1, days: 3 }],
    ["then weekly until day 20", { kind: "bandage-change", every: 7, day: 20 }],
    ["then recheck day 9", { kind: "recheck", when: 9 }],
    ["recheck 3 days after discharge", { kind: "recheck", when: 3 }],
    ["recheck 3 days after today", { kind: "recheck", when: 3 }],
    ["recheck 3 days after the closure", { kind: "recheck", when: 3, after: "closure" }],
    ["wound-check day 3 or 4", { kind: "recheck", when: [3, 4] }],
    ["recheck 2026-03-12 to 2026-03-14", { kind: "recheck", when: [10, 12] }],
    ["recheck on 2026-03-12 - 2026-03-14", { kind: "recheck", when: [10, 12] }],
    ["change every 2 days 4x", { kind: "bandage-change", every: 2, times: 4 }],
  ])("%s", (text, expected) => {
    expect(read(text)).toEqual(expected);
  });

  test("a date counts days over month ends, leap days and clock changes", () => {
    expect(read("recheck on 2028-03-01", "2028-02-28")).toEqual({ kind: "recheck", when: 2 });
    expect(read("recheck on 2027-01-02", "2026-12-30")).toEqual({ kind: "recheck", when: 3 });
    expect(read("recheck on 2026-03-09", "2026-03-07")).toEqual({ kind: "recheck", when: 2 });
  });
});

/** The code and the words it points at. */
function seen(...course: string[]): string[] {
  const { places } = planOf({ course });
  return run({ course }).problems.map(({ code, at }) => {
    const index = course.findIndex((_, i) => places[`care/0/course/${i}`]?.line === at.line);
    const from = at.column - (places[`care/0/course/${index}`]?.column ?? 0);
    return `${code} [${course[index]?.slice(from, from + at.length)}]`;
  });
}

describe("a line that cannot be understood points at its words", () => {
  test.each([
    [["chnage every day for 3 days"], ["visit-kind-unknown [chnage]"]],
    // In brackets without quotes, a comma makes two lines of one.
    [["change every day for 3 days", "first tomorrow"], ["visit-name-missing [first]"]],
    [["for 3 days"], ["visit-name-missing [for]"]],
    [["stitches off day 10"], ["visit-kind-unknown [stitches off]"]],
    [["change evry day for 3 days"], ["course-word-unknown [evry]"]],
    [["recheck dya 10"], ["course-word-unknown [dya]"]],
    [["recheck day"], ["course-line-unfinished []"]],
    [["recheck day 10-"], ["course-word-unknown [-]"]],
    [["recheck day 14-10"], ["course-range-backwards [14-10]"]],
    [["recheck day 10, day 12"], ["course-said-twice [day 12]"]],
    [["recheck day 0"], ["course-day-not-after-discharge [day 0]"]],
    [["recheck 0 days after discharge"], ["course-number-out [0 days]"]],
    [["change every day for 3 days, first 0 days after today"], ["course-number-out [0 days]"]],
    [["recheck on 2026-03-01"], ["course-day-not-after-discharge [on 2026-03-01]"]],
    [["recheck on 2026-02-30"], ["course-day-unreadable [2026-02-30]"]],
    [["recheck day 4000"], ["course-number-out [day 4000]"]],
    [["recheck"], ["visit-when-missing [recheck]"]],
    [["recheck day 3 for 5 days"], ["course-words-clash [5 days]"]],
    [["change every 3 days"], ["visit-end-missing [change]"]],
    [["change every 0 days until day 3"], ["course-number-out [0 days]"]],
    [["change every 3 days until closing"], ["visit-kind-unknown [closing]"]],
    [["then every 2 days until day 8"], ["nothing-to-follow [then]"]],
    [["recheck 3 days before closure"], ["course-days-from-nothing [3 days]"]],
    [["recheck 10-14 days"], ["course-days-from-nothing [10-14 days]"]],
    [["change every day 3-5 days"], ["course-days-from-nothing [3-5 days]"]],
    [["every 2 days until day 9"], ["visit-name-missing [every]"]],
    [["Every 2 days until day 9"], ["visit-name-missing [Every]"]],
    [["maybe stitches off day 10"], ["visit-kind-unknown [stitches off]"]],
    [["drainout day 3"], ["visit-kind-unknown [drainout]"]],
    [["3 days recheck"], ["visit-kind-unknown [3]"]],
    [["recheck today"], ["course-day-not-after-discharge [today]"]],
    [["recheck in 3"], ["course-word-unknown [3]"]],
    [["recheck in closure"], ["course-word-unknown [closure]"]],
    [["recheck on Friday"], ["course-word-unknown [Friday]"]],
    [["recheck 2026-03-14 to 2026-03-12"], ["course-range-backwards [2026-03-14 to 2026-03-12]"]],
    [["change every zero days until day 3"], ["course-number-out [zero days]"]],
    [["change every day for 3 days day 2"], ["course-words-clash [day 2]"]],
    [["change every day for 3 days, then recheck"], ["course-word-unknown [recheck]"]],
    [["change every day every 2 days for 3 days"], ["course-said-twice [every 2 days]"]],
    [["change every day until 4"], ["course-word-unknown [4]"]],
    [["recheck until closure"], ["course-words-clash [closure]"]],
    [["recheck first day 3"], ["course-words-clash [day 3]"]],
  ])("%j", (course, expected) => {
    expect(seen(...course)).toEqual(expected);
  });

  test.each([
    ["change every day for 3 days day 2", "day 2"],
    ["recheck day 3 for 5 days", "5 days"],
    ["change every 3 days", "change"],
    ["recheck day 10, day 12", "day 12"],
    ["for 3 days", "for"],
    ["recheck day 0", "day 0"],
    ["recheck on 2026-02-30", "2026-02-30"],
    ["recheck day 3, not before 8:75", "8:75"],
  ])("%s: its words are named", (line, given) => {
    expect(run({ course: [line] }).problems.map(({ values }) => values)).toEqual([{ given }]);
  });

  test.each([
    ["recheck day 14-10", { from: 14, to: 10 }],
    ["recheck 2026-03-14 to 2026-03-12", { from: { day: "2026-03-14" }, to: { day: "2026-03-12" } }],
    ["recheck day 4000", { given: "day 4000", least: 1, most: 366 }],
    ["change every 2 days 101 times", { given: "101 times", least: 1, most: 100 }],
  ])("%s: the numbers or dates are named", (line, values) => {
    expect(run({ course: [line] }).problems).toMatchObject([{ values }]);
  });

  test.each([
    ["then", ["change", "bandage off", "recheck"]],
    ["recheck 3 days after", ["change", "bandage off", "recheck"]],
    ["change every", ["day", "other day", "2-3 days", "week"]],
    ["recheck day 3 for", ["3 days", "2 weeks"]],
    ["change every day until", ["day 14", "drain out", "tomorrow"]],
    ["change every day first", ["tomorrow", "day 3", "day", "days", "in", "on"]],
    ["recheck day", ["a number"]],
    ["recheck in", ["3 days", "2 weeks"]],
    ["recheck on", ["2026-03-12"]],
    ["recheck 2026-03-12 to", ["2026-03-12"]],
    ["recheck day 3, not before", ["08:00", "15:30"]],
    ["recheck day 3 for  ", ["3 days", "2 weeks"]],
  ])("%s: what would end the line is named at its end", (line, expected) => {
    const { problems } = parseLine(line, 0, place, { kinds, discharged: "2026-03-02", going: change });
    expect(problems).toMatchObject([
      { code: "course-line-unfinished", at: { column: place.column + line.trimEnd().length, length: 1 } },
    ]);
    const told = problems.flatMap(({ values }) => ("expected" in values ? values.expected : []));
    expect(told.slice(0, expected.length)).toEqual(expected);
    expect(told).not.toContain("today");
  });

  test("no more than six ways to go on are named", () => {
    const told = run({ course: ["change every day for 3 days first"] }).problems.map(({ values }) => values);
    expect(told).toEqual([{ expected: ["tomorrow", "day 3", "day", "days", "in", "on"] }]);
  });

  test("a word at which a clause may begin is told with those words", () => {
    const told = run({ course: ["change every day for 3 days soon"] }).problems.map(({ values }) => values);
    expect(told).toMatchObject([{ given: "soon", expected: ["every", "for", "until", "first", ",", ";"] }]);
  });

  test("the nearest known words are named", () => {
    const near = (line: string) =>
      run({ course: [line] }).problems.map(({ values }) => ("near" in values ? values.near : []));
    expect(near("chnage every day for 3 days")).toEqual([["change"]]);
    expect(near("change evry day for 3 days")).toEqual([["every"]]);
    expect(near("recheck dya 10")).toEqual([["day", "days"]]);
    expect(near("recheck day 10 if-needed")).toEqual([["if needed", "as needed"]]);
  });

  test("every line is told of, and what follows from an unread line is not", () => {
    expect(seen("chnage every day for 3 days", "then every 2 days until day 9", "rechek day 10")).toEqual([
      "visit-kind-unknown [chnage]",
      "visit-kind-unknown [rechek]",
    ]);
  });
});

test("the last minute of an hour, and that of a day, are times like others", () =>
  expect(seen("recheck day 3, not before 8:59, not after 23:59")).toEqual([]));

describe("lines that contradict each other", () => {
  test.each([
    [["sutures out 10 days after closure"], ["anchor-unknown [closure]"]],
    [["change every day for 3 days", "recheck 3 days after change"], ["anchor-repeats [change]"]],
    [
      ["closure 3 days after recheck", "recheck 3 days after closure"],
      ["anchor-circle [3 days]", "anchor-circle [3 days]"],
    ],
    [["change every day for 3 days", "drain out 2 days after the last chnage"], ["visit-kind-unknown [chnage]"]],
    [["change every day until drain out", "drain out 2 days after the last change"], ["anchor-circle [2 days]"]],
    [["recheck day 3, not before 8"], ["course-word-unknown [8]"]],
    [["recheck day 3, not before 25:00"], ["time-unreadable [25:00]"]],
    [["recheck day 3, not before 8:00, not before 9:00"], ["course-said-twice [not before 9:00]"]],
    [["change every day until closure", "maybe closure day 7"], ["end-uncertain [closure]"]],
    [["change every 2 days while bandaged"], ["bandage-end-unknown [while bandaged]"]],
    [["change every 7 days for 3 days"], ["gap-longer-than-window [every 7 days]"]],
    [["change every day for 5 days", "change every 2 days until day 3"], ["course-ends-before-it-begins [day 3]"]],
    [["change every day until day 3, first day 5"], ["course-ends-before-it-begins [day 3]"]],
    [["maybe closure"], ["visit-when-missing [closure]"]],
    [["sutures out day 5-7"], ["window-unusual [day 5-7]"]],
    [["drain out day 3-7"], ["window-unusual [day 3-7]"]],
    [["change every 10 days until day 30"], ["gap-unusual [every 10 days]"]],
  ])("%j", (course, expected) => {
    expect(seen(...course)).toEqual(expected);
  });

  test("a revision counts its days from its own paper: what is unusual is told only of days after a visit", () => {
    const codes = (course: string[]) =>
      computeVisits({ ...planOf({ course }), revision: 1 }, kinds).problems.map(({ code }) => code);
    expect(codes(["drain out day 2-4"])).toEqual([]);
    expect(codes(["closure day 2", "sutures out 3 days after closure"])).toEqual(["window-unusual"]);
  });

  test("visits that wait for each other are named", () => {
    const course = ["drain out day 3", "closure 3 days after recheck", "recheck 3 days after closure"];
    expect(run({ course }).problems.map(({ values }) => values)).toEqual([
      { given: "closure, recheck" },
      { given: "closure, recheck" },
    ]);
  });

  // Cote, Clinical Veterinary Advisor, 4th ed, pp. 3223 and 3234, as in the project's published facts.
  test.each([
    ["sutures out day 10-14"],
    ["staples out day 10-14"],
    ["drain out day 3-5"],
    ["change every 1-7 days until day 14"],
  ])("%s is within the published days", (line) => expect(seen(line)).toEqual([]));

  test("a course with too many ways to go is refused, not computed for ever", () => {
    const codes = (line: string) =>
      run({ course: Array.from({ length: 20 }, () => line) }).problems.map(({ code }) => code);
    expect(codes("maybe recheck day 3-9")).toEqual(["course-too-open"]);
    expect(codes("recheck day 1-30")).toEqual(["course-too-open"]);
    expect(codes("change every 1-9 days for 2-300 days, first tomorrow")).toContain("course-too-open");
  });
});

describe('what "then" goes on with', () => {
  const kindsOf = (course: string[]) =>
    run({ course }).value?.purposes.map(({ kind, counts }) => [kind, counts.likely]) ?? [];

  test("is what repeated last, not a single visit between", () =>
    expect(kindsOf(["change every day for 2 days", "recheck day 9", "then every 3 days until day 8"])).toEqual([
      ["recheck", 1],
      ["bandage-change", 4],
    ]));

  test("is never a single visit, which is told", () =>
    expect(run({ course: ["recheck day 9", "then every 3 days until day 8"] }).problems).toMatchObject([
      { code: "nothing-to-follow", at: { line: 11 } },
    ]));
});
