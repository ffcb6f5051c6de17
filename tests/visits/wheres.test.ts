import { expect, test } from "vitest";
import type { BodySite, Care } from "#compute/facts.js";
import { computeVisits } from "../../src/compute/visits/visits.js";
import { kinds, planOf } from "./help.js";

const care = (site: string | null, side: BodySite["side"] = null): Care => ({
  topic: "x",
  site,
  side,
  bandage: null,
  since: "2026-03-02",
  done: [],
  from: { file: "plan", line: 1, column: 1, length: 1 },
});

/** What each visit is for, and where on the body, of two cares: one changed on day 1, the other seen on day 2, both on day 9. */
function visitsFor(...cares: Care[]) {
  const plan = planOf({
    course: [
      ["change day 1", "recheck day 9"],
      ["x-ray day 2", "recheck day 9"],
    ],
  });
  const visits = computeVisits(plan, kinds, [], cares).value?.visits ?? [];
  return visits.map(({ purposes }) =>
    purposes.map(({ kind, where }) => [kind, ...(where ? [where.side ?? "", where.site] : [])].join(" ").trim()),
  );
}

test("the visits for two places each say for which", () => {
  expect(visitsFor(care("cheek", "left"), care("tail"))).toEqual([
    ["bandage-change left cheek"],
    ["x-ray  tail"],
    ["recheck left cheek", "recheck  tail"],
  ]);
  // The other side of the body is another place.
  expect(visitsFor(care("cheek", "left"), care("cheek", "right"))[1]).toEqual(["x-ray right cheek"]);
});

test("nobody could ask where, if there is one place: none is told", () => {
  const none = [["bandage-change"], ["x-ray"], ["recheck", "recheck"]];
  expect(visitsFor(care("cheek", "left"), care("cheek", "left"))).toEqual(none);
  expect(visitsFor(care("cheek", "left"), care(null))).toEqual(none);
  expect(visitsFor()).toEqual(none);
});
