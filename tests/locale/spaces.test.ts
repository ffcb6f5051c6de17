import { expect, it } from "vitest";
import { inARow, wideStops } from "#locale/spaces.js";

it("sentences of a script with full-width stops follow each other without a space, others with one", () => {
  expect(inARow(["马上就医。", "路上打电话。"])).toBe("马上就医。路上打电话。");
  expect(inARow(["Go now.", "Ring on the way."])).toBe("Go now. Ring on the way.");
  expect(inARow(["Bramble已经24小时什么都没吃。", "Ring."])).toBe("Bramble已经24小时什么都没吃。Ring.");
});

it("a space that no full-width stop precedes stays", () => {
  expect(wideStops("每次 1 片：8:00 PM，吃 1 片")).toBe("每次 1 片：8:00 PM，吃 1 片");
});
