import { expect, it } from "vitest";
import { viewShapes } from "#compose/view-shape.js";
// @ts-expect-error a script without types
import { viewShapes as fresh } from "../../scripts/facts-shape.mjs";

it("the shape templates are checked against is that of the facts (npm run shape)", () => {
  expect(viewShapes).toEqual(fresh());
});
