import { readdirSync } from "node:fs";
import { expect, test } from "vitest";
import { nearest } from "#problems/near.js";

const topics = readdirSync("shared/topics").map((file) => file.replace(".json", ""));

test.each([
  ["open-wound", "open-wound-clinic-bandage"],
  ["abcess", "abscess-home-care"],
  ["abscess", "abscess-home-care"],
  ["surgical-drian", "surgical-drain"],
  ["blocage", "urinary-blockage"],
  ["drain", "surgical-drain"],
])("%s is most like %s", (given, meant) => expect(nearest(given, topics)[0]).toBe(meant));

test("what is like no part of a name has none near", () => {
  for (const given of ["knee", "x", "on", "moonflower", ""]) expect(nearest(given, topics)).toEqual([]);
});

test("a whole name that is near goes before any that holds it in part", () => {
  expect(nearest("burns", [...topics, "burn-after-care"])).toEqual(["burn"]);
});
