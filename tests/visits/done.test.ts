import { expect, test } from "vitest";
import { computeVisits } from "../../src/compute/visits/visits.js";
import { brief, type Case, kinds, planOf } from "./help.js";

/** The visits still to come of a case in which some have been: what each was for, in the words a clinician may use. */
function left(given: Case, ...been: string[][]): string[] {
  const done = been.map((visit, i) => ({ at: `2026-02-2${i}T10:00`, visit, did: [], decided: "continue" as const }));
  const { value } = computeVisits({ ...planOf(given), revision: done.length, done }, kinds);
  return value?.visits.map(brief) ?? [];
}

const changes = "change every day for 2 days";

test("visits that took place have the first numbers, each kind its own", () => {
  const course = [changes, "recheck day 5", "x-ray day 6"];
  expect(left({ course }, ["dressing change"], ["bandage-change", "wound check"])).toEqual([
    "bandage-change-3 expected 03-03",
    "bandage-change-4 expected 03-04",
    "recheck-2 expected 03-07",
    "x-ray-1 expected 03-08",
  ]);
});

test("words that name no kind of visit count for none", () =>
  expect(left({ course: [changes] }, ["a chat"], ["change", "a chat"])).toEqual([
    "bandage-change-2 expected 03-03",
    "bandage-change-3 expected 03-04",
  ]));

test("two wounds changed on one visit have each had one change", () =>
  expect(left({ course: [[changes], ["change every day for 2-3 days"]] }, ["change", "change"])).toEqual([
    "bandage-change-2 +bandage-change-2 expected 03-03",
    "bandage-change-3 +bandage-change-3 expected 03-04",
    "bandage-change-4-2 possible 03-05",
  ]));

test("changes of the second care alone keep their numbers too, and a single visit of it has its first", () =>
  expect(left({ course: [[], [changes, "recheck day 5"]] }, ["change", "recheck"])).toEqual([
    "bandage-change-2-2 expected 03-03",
    "bandage-change-3-2 expected 03-04",
    "recheck-1-2 expected 03-07",
  ]));

// After two changes the third and the first injection share day 1, as they shared day 3 on the first paper.
test("a trip keeps its name on the next paper, whatever else is done on it", () => {
  const first = left({ course: ["change every day for 4 days", "injection every day 2 times, first day 3"] });
  const next = left({ course: [changes, "injection every day 2 times, first tomorrow"] }, ["change"], ["change"]);
  expect(first[2]).toBe("bandage-change-3 +injection-1 expected 03-05");
  expect(next[0]).toBe("bandage-change-3 +injection-1 expected 03-03");
});
