import { expect, test } from "vitest";
import { chartOf } from "#compute/doses/chart.js";
import type { Dose } from "#compute/facts.js";

const dose = (medicine: string, at: string, slot = at.slice(11)): Dose => ({
  ...{ medicine, number: 1, at, slot, part: "morning", give: { value: "1", unit: "tablet" } },
  from: { file: "plan", line: 1, column: 1, length: 1 },
});

test("every day from the first dose to the last, every dose in its column, whatever order they come in", () => {
  const doses = [
    dose("b", "2026-02-28T20:00"),
    dose("a", "2026-03-02T08:00"),
    dose("b", "2026-03-02T20:00"),
    dose("a", "2026-02-28T08:00"),
    // Given late the first time: it stands in the column of its slot.
    dose("c", "2026-02-28T17:30", "14:00"),
  ];
  expect(chartOf(doses)).toEqual({
    columns: [
      { medicine: "a", at: "08:00", part: "morning" },
      { medicine: "c", at: "14:00", part: "morning" },
      { medicine: "b", at: "20:00", part: "morning" },
    ],
    rows: [
      { day: "2026-02-28", cells: [doses[3], doses[4], doses[0]] },
      { day: "2026-03-01", cells: [null, null, null] },
      { day: "2026-03-02", cells: [doses[1], null, doses[2]] },
    ],
  });
});

test("two medicines at one time of day have a column each, in the order they are given in", () => {
  const { columns, rows } = chartOf([dose("b", "2026-03-02T08:00"), dose("a", "2026-03-02T08:00")]) ?? {};
  expect(columns?.map(({ medicine }) => medicine)).toEqual(["b", "a"]);
  expect(rows).toHaveLength(1);
});

test("none where there is nothing to give", () => expect(chartOf([])).toBeNull());
