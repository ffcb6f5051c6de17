import { expect, it } from "vitest";
import { restOf, type Turn } from "#compute/revise/course-lines.js";
import { parseLine } from "#compute/visits/language/parse-line.js";
import { openTables } from "#tables/tables.js";
import { shippedFiles } from "../../src/io/shipped.js";

const at = { file: "plan.yaml", line: 1, column: 1, length: 1 };
const decoder = new TextDecoder();
const shipped = Object.entries(await shippedFiles()).filter(([path]) => path.startsWith("shared/"));
const tables = openTables(Object.fromEntries(shipped.map(([path, bytes]) => [path, decoder.decode(bytes)])));
const kinds = tables.value?.visits ?? [];
const usual: Turn = { elapsed: 1, was: ["bandage-change"], begun: ["bandage-change"], decided: "continue", gap: null };

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
  [["change every day for 3-5 days"], {}, ["change every day, for 2-4 days, first tomorrow"]],
  [["change every day for 2 days"], {}, ["change every day, for 1 day, first tomorrow"]],
  [["change every 2-3 days until day 14"], {}, ["change every 2-3 days, until day 13, first day 2-3"]],
  [["change every day 2 times"], {}, ["change every day, 1 time, first tomorrow"]],
  // The time of day stays.
  [
    ["change every day for 4 days, not before 14:00"],
    {},
    ["change every day, for 3 days, first tomorrow, not before 14:00"],
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
    { was: ["closure"], begun: ["closure"] },
    ["recheck every 7 days, 2 times, first day 10"],
  ],
  [["recheck 1 day after the last change"], { was: [], begun: [] }, ["recheck 1 day after the last change"]],
])("%j after %j", (lines, turn, expected) => {
  expect(left(lines, turn)).toEqual(expected);
});
