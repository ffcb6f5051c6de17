/** Of a medicine given only as needed: a row a day, no more boxes in it than doses are allowed, and each box by a name of its own. */
import fc from "fast-check";
import { expect, test } from "vitest";
import type { Handout } from "#handout/handout.js";
import { blocksIn } from "#handout/walk.js";
import { handoutWith } from "../examples/with-medicine.js";

/** The rows of the log: each with its day and its boxes. */
function logOf(handout: Handout) {
  const rows = [...blocksIn(handout)].flatMap((block) => (block.kind === "table" ? block.rows : []));
  return rows.flatMap((cells) => {
    const inlines = cells.flatMap((cell) => cell.inlines);
    const boxes = inlines.flatMap((one) => (one.kind === "tick" && one.id?.startsWith("needed-") ? [one] : []));
    const day = inlines.flatMap((one) => (one.kind === "when" ? [one.iso] : []));
    return boxes.length > 0 ? [{ day, boxes }] : [];
  });
}

const asNeeded = (most: number, days: number) =>
  `name: carprofen, tablet: 100 mg, splits: halves, give: 0.5 tablet, every: 8 h, as needed: at most ${most} a day, for: ${days} days, last given: 09:00`;

test("it begins on the day of discharge and ends with the course, or after a fortnight", () => {
  const cases = fc.property(fc.integer({ min: 1, max: 3 }), fc.integer({ min: 1, max: 21 }), (most, days) => {
    const log = logOf(handoutWith(asNeeded(most, days), "en"));
    expect(log.map(({ day }) => day)).toEqual(
      Array.from({ length: Math.min(days, 14) }, (_, n) => [`2026-03-${String(2 + n).padStart(2, "0")}`]),
    );
    expect(new Set(log.map(({ boxes }) => boxes.length))).toEqual(new Set([most]));
    const boxes = log.flatMap((row) => row.boxes);
    expect(new Set(boxes.map(({ id }) => id)).size).toBe(boxes.length);
    expect(new Set(boxes.map(({ label }) => label)).size).toBe(boxes.length);
  });
  fc.assert(cases, { numRuns: 15 });
});

test.each(["en", "es", "de", "fr", "pt-BR", "vi", "zh-Hans", "ar"])(
  "in %s each box is named and the most is said",
  (tag) => {
    const handout = handoutWith(asNeeded(2, 3), tag);
    const log = logOf(handout);
    expect(log.flatMap(({ boxes }) => boxes)).toHaveLength(6);
    for (const { boxes } of log) for (const { label } of boxes) expect(label).toMatch(/[^\s\d]{2}/u);
  },
);

test("what is given by the clock has none", () => {
  const byTheClock =
    "name: carprofen, tablet: 100 mg, splits: halves, give: 0.5 tablet, every: 12 h, for: 4 days, last given: 09:00";
  expect(logOf(handoutWith(byTheClock, "en"))).toEqual([]);
});
