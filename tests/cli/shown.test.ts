import { expect, test } from "vitest";
import { visitsShown } from "../../src/cli/entry/shown.js";

type Visit = { purposes: { kind: string }[]; earliest: string; latest: string; certainty: string };
const visit = (earliest: string, latest: string, certainty = "sure"): Visit => ({
  ...{ purposes: [{ kind: "suture-removal" }], earliest, latest, certainty },
});
const contexts = (
  visits: Visit[],
  trips: { fewest: number; most: number },
  ends: { earliest: string; latest: string },
) =>
  visitsShown({ course: { visits, trips, ends } } as never).map(({ code, values }) => [
    code,
    (values as { context: string }).context,
  ]);

test("days and numbers of visits that are one are told as one", () => {
  const [first, last] = ["2026-12-10", "2026-12-14"];
  const one = { fewest: 1, most: 1 };
  expect(contexts([visit(last, last)], one, { earliest: last, latest: last })).toEqual([
    ["new-visit", "day"],
    ["new-visits", "fixed"],
  ]);
  expect(contexts([visit(first, last)], one, { earliest: first, latest: last })).toEqual([
    ["new-visit", "window"],
    ["new-visits", "counted"],
  ]);
  expect(contexts([visit(last, last, "possible")], { fewest: 1, most: 2 }, { earliest: last, latest: last })).toEqual([
    ["new-visit", "possible-day"],
    ["new-visits", "ending"],
  ]);
  expect(contexts([visit(first, last, "possible")], { fewest: 1, most: 2 }, { earliest: first, latest: last })).toEqual(
    [
      ["new-visit", "possible"],
      ["new-visits", ""],
    ],
  );
});
