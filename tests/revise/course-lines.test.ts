import fc from "fast-check";
import { expect, it } from "vitest";
import { restOf, type Turn } from "#compute/revise/course-lines.js";
import { parseLine } from "#compute/visits/language/parse-line.js";
import { readLines } from "#compute/visits/read-lines.js";
import { openTables } from "#tables/tables.js";
import { shippedFiles } from "../../src/io/shipped.js";
import { planOf, run } from "../visits/help.js";

const at = { file: "plan.yaml", line: 1, column: 1, length: 1 };
const decoder = new TextDecoder();
const shipped = Object.entries(await shippedFiles()).filter(([path]) => path.startsWith("shared/"));
const tables = openTables(Object.fromEntries(shipped.map(([path, bytes]) => [path, decoder.decode(bytes)])));
const kinds = tables.value?.visits ?? [];
const usual: Turn = {
  elapsed: 1,
  was: ["bandage-change"],
  ago: new Map([["bandage-change", 0]]),
  decided: "continue",
  gap: null,
};

const recheckToday: Partial<Turn> = { was: ["recheck"], ago: new Map([["recheck", 0]]) };

/** What is left of a course, and that the course language reads it as it was meant. */
function left(lines: string[], turn: Partial<Turn> = {}): string[] {
  const read = (text: string) => {
    const { value, problems } = parseLine(text, 0, at, { kinds, discharged: "2026-03-02", going: null });
    if (!value || problems.length > 0) throw new Error(`${text}: ${JSON.stringify(problems)}`);
    return value;
  };
  const { course } = restOf(lines.map(read), { ...usual, ...turn });
  for (const line of course) read(line);
  return course;
}

it.each<[string[], Partial<Turn>, string[]]>([
  [["change every day for 3-5 days"], {}, ["change every day, until day 2-4, first tomorrow"]],
  [["change every day for 2 days"], {}, ["change every day, 1 time, first tomorrow"]],
  [["change every 2-3 days until day 4-5"], { elapsed: 2 }, ["maybe change every 2-3 days, 1 time, first day 2-3"]],
  // First on day 1, then on day 3 or 4, and 5 to 7: never after day 7, the seventh from the first.
  [["change every 2-3 days for 7 days, first tomorrow"], {}, ["change every 2-3 days, until day 6, first day 2-3"]],
  [["change every 2-3 days for 7 days"], { elapsed: 2 }, ["change every 2-3 days, until day 5, first day 2-3"]],
  // Its first visit was today, whatever day that is.
  [["change every day for 4 days, first day 3"], { elapsed: 3 }, ["change every day, until day 3, first tomorrow"]],
  // Too few days are left for another one.
  [["change every 2-3 days until day 14"], { elapsed: 13 }, []],
  [["change every 2-3 days for 7 days"], { elapsed: 6 }, []],
  // Whatever ends it besides its last day still does.
  [
    ["change every 2-3 days until closure or day 14"],
    {},
    ["change every 2-3 days, until day 13 or closure, first day 2-3"],
  ],
  [
    ["change every 2 days for 9 days, while bandaged"],
    {},
    ["change every 2 days, until day 8, while bandaged, first day 2"],
  ],
  [["change every 2-3 days until day 14"], {}, ["change every 2-3 days, until day 13, first day 2-3"]],
  [["change every day 2 times"], {}, ["change every day, 1 time, first tomorrow"]],
  // The time of day stays.
  [
    ["change every day for 4 days, not before 14:00"],
    {},
    ["change every day, until day 3, first tomorrow, not before 14:00"],
  ],
  [["recheck day 5-7, not after 12:00"], {}, ["recheck day 4-6, not after 12:00"]],
  // What has not begun loses no days.
  [["recheck every week for 3 weeks, first day 10"], {}, ["recheck every 7 days, for 21 days, first day 9"]],
  [
    ["recheck every week 2 times, first 10 days after closure"],
    {},
    ["recheck every 7 days, 2 times, first 10 days after closure"],
  ],
  [
    ["recheck every week 2 times, first 10 days after closure"],
    { was: ["closure"], ago: new Map([["closure", 0]]) },
    ["recheck every 7 days, 2 times, first day 10"],
  ],
  // As long as changes go on, nobody knows which is the last; once they are over, it was today's or the one before.
  [
    ["change every day for 3-5 days", "recheck 3 days after the last change"],
    {},
    ["change every day, until day 2-4, first tomorrow", "recheck 3 days after the last change"],
  ],
  [["change every day for 1 day", "recheck 3-4 days after the last change"], {}, ["recheck day 3-4"]],
  [
    ["change every day for 3 days", "recheck 3-4 days after the last change"],
    {
      elapsed: 1,
      was: ["drain-removal"],
      ago: new Map([
        ["drain-removal", 0],
        ["bandage-change", 2],
      ]),
      decided: "stop",
    },
    ["recheck day 1-2"],
  ],
  // Of two rechecks the one that is due has been; both, where the visit was for both.
  [["recheck day 3", "recheck day 10"], { elapsed: 3, ...recheckToday }, ["recheck day 7"]],
  [["recheck day 10", "recheck day 3"], { elapsed: 3, ...recheckToday }, ["recheck day 7"]],
  [["recheck day 3", "recheck day 10"], { elapsed: 2, ...recheckToday }, ["recheck day 8"]],
  [["recheck day 3-6", "recheck day 5-9"], { elapsed: 5, ...recheckToday }, ["recheck day 1-4"]],
  [["recheck day 3-6", "recheck day 5-9"], { elapsed: 5, ...recheckToday, was: ["recheck", "recheck"] }, []],
  [
    ["recheck 2 days after closure", "recheck day 3", "closure day 8"],
    { elapsed: 3, ...recheckToday },
    ["recheck 2 days after closure", "closure day 5"],
  ],
  // A run that says its first day begins on that day, whatever other visits of its kind there were before.
  [
    ["change every day for 3 days, first tomorrow", "change every 7 days for 21 days, first day 14"],
    {},
    ["change every day, until day 2, first tomorrow", "change every 7 days, for 21 days, first day 13"],
  ],
  [
    ["change every day for 3 days, first tomorrow", "change every 7 days for 21 days, first day 14"],
    { elapsed: 3 },
    ["change every 7 days, for 21 days, first day 11"],
  ],
  [
    ["recheck day 3", "recheck every 7 days 3 times, first day 12"],
    { elapsed: 3, ...recheckToday },
    ["recheck every 7 days, 3 times, first day 9"],
  ],
  [
    ["recheck day 3", "recheck every 7 days 3 times, first 5 days after closure", "closure day 6"],
    { elapsed: 3, ...recheckToday },
    ["recheck every 7 days, 3 times, first 5 days after closure", "closure day 3"],
  ],
  // It came a day early: that was its first.
  [["change every day 3 times, first day 3"], { elapsed: 2 }, ["change every day, 2 times, first tomorrow"]],
  // A visit for something else puts off no change: the next is 2 or 3 days after the last one, which was yesterday.
  [
    ["change every 2-3 days, until day 13, first day 2-3"],
    {
      was: ["recheck"],
      ago: new Map([
        ["recheck", 0],
        ["bandage-change", 1],
      ]),
    },
    ["change every 2-3 days, until day 12, first day 1-2"],
  ],
  // A decision whose days are over is one no longer, and nothing waits for it.
  [
    ["maybe closure day 7-8", "sutures out 10-14 days after closure", "change every day until closure or day 15"],
    { elapsed: 8 },
    ["change every day, until day 7, first tomorrow"],
  ],
  [
    ["sutures out 10-14 days after closure"],
    {
      was: ["recheck"],
      ago: new Map([
        ["recheck", 0],
        ["closure", 4],
      ]),
    },
    ["sutures out day 6-10"],
  ],
])("%j after %j", (lines, turn, expected) => {
  expect(left(lines, turn)).toEqual(expected);
});

it("a recheck of one wound is not that of another, which is due a week later", () => {
  const [first, later] = ["recheck day 3", "recheck day 10"].map((text, care) => {
    return parseLine(text, care, at, { kinds, discharged: "2026-03-02", going: null }).value ?? expect.fail(text);
  });
  if (!first || !later) throw new Error("no lines");
  const turn = { ...usual, ...recheckToday, elapsed: 3 };
  expect(restOf([first], turn, [later])).toEqual({ course: [], missed: [] });
  expect(restOf([later], turn, [first])).toEqual({ course: ["recheck day 7"], missed: [] });
  // With none that is due, it was this one, and came early.
  expect(restOf([later], turn)).toEqual({ course: [], missed: [] });
});

/** A course goes on day by day: whatever it said, what is left of it on the day of any of its visits is a course too. */
it("what is left of any course can be kept", () => {
  const span = (least: number, most: number) =>
    fc
      .tuple(fc.integer({ min: least, max: most }), fc.nat(2))
      .map(([from, more]) => (more > 0 ? `${from}-${from + more}` : `${from}`));
  const some = <T>(part: fc.Arbitrary<T>) => fc.option(part, { nil: undefined });
  const courses = fc
    .record({
      days: span(2, 5),
      first: some(fc.constantFrom("tomorrow", "day 2")),
      gap: span(1, 3),
      until: fc.constantFrom(
        "until day 14",
        "for 8-9 days",
        "3-4 times",
        "until day 12 or closure",
        "until closure or day 15",
      ),
      closure: fc.constantFrom("maybe closure day 7-14", "closure day 9-10"),
      sutures: some(span(10, 12)),
      last: some(span(1, 4)),
      bandaged: some(fc.constant("flush every 2 days for 7 days, while bandaged")),
    })
    .map(({ days, first, gap, until, closure, sutures, last, bandaged }) => [
      `change every day for ${days} days${first ? `, first ${first}` : ""}`,
      `then every ${gap} days ${until}`,
      closure,
      ...(sutures ? [`sutures out ${sutures} days after closure`] : []),
      ...(last ? [`recheck ${last} days after the last change`] : []),
      ...(bandaged ? [bandaged] : []),
    ]);
  fc.assert(
    fc.property(courses, fc.nat(), (course, pick) => {
      const visits = run({ course }).value?.visits ?? [];
      const visit = visits[pick % visits.length];
      if (!visit) return;
      const elapsed = (Date.parse(visit.ideal) - Date.parse("2026-03-02")) / 86_400_000;
      const was = visit.purposes.map(({ kind }) => kind);
      const ago = new Map([["bandage-change", 1], ...was.map((kind): [string, number] => [kind, 0])]);
      const lines = readLines(planOf({ course }), kinds).lines;
      const decided = was.includes("closure") ? "close" : "continue";
      const { course: left } = restOf(lines, { elapsed, was, ago, decided, gap: null });
      // Where a closure leaves no room for another change, what waits for the last one has no day: that is told.
      const told = ["day-against-others", "window-against-others"];
      const stopped = run({ course: left, discharged: `${visit.ideal}T10:00` }).problems.filter(
        ({ severity, code }) => severity === "stop" && !told.includes(code),
      );
      expect({ course, elapsed, was, left, stopped }).toMatchObject({ stopped: [] });
    }),
    { numRuns: Number(process.env["REVISE_CASES"] ?? 60) },
  );
});
