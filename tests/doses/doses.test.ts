/** The medicines of a plan together: what one of them stops, and what is told of all. */
import { describe, expect, test } from "vitest";
import { doses, q, told, type Written } from "./help.js";

const tablets: Written = { name: "carprofen", tablet: q("100 mg"), give: q("1 tablet"), every: "24 h" };

describe("a plan", () => {
  test("without medicines has none, and no chart", () => {
    expect(doses([])).toEqual({ value: { medicines: [], chart: null }, problems: [] });
  });

  test("keeps its medicines in the order in which they were written", () => {
    const { value } = doses([{ ...tablets, name: "gabapentin" }, tablets, { ...tablets, name: "moonflower" }]);
    expect(value?.medicines.map(({ id }) => id)).toEqual(["gabapentin", "carprofen", "moonflower"]);
  });

  test("has no doses at all where one medicine cannot be given, and tells what is asked of the others too", () => {
    const { value, problems } = doses([
      { ...tablets, every: "often" },
      { ...tablets, name: "moonflower" },
    ]);
    expect(value).toBeNull();
    expect(problems.map(({ code }) => code)).toEqual(expect.arrayContaining(["every-unreadable", "medicine-unknown"]));
  });

  test("has none where one must never be given", () => {
    const { value, problems } = doses([tablets, { ...tablets, name: "ibuprofen" }]);
    expect(value).toBeNull();
    expect(problems.filter(({ severity }) => severity === "stop").map(({ code }) => code)).toEqual([
      "never-for-species",
    ]);
  });

  test("tells which names the table does not hold, where they were written", () => {
    expect(told("medicine-unknown", [tablets, { ...tablets, name: "Moonflower 5" }])).toEqual([
      { at: "1/name", given: "Moonflower 5" },
    ]);
  });
});
