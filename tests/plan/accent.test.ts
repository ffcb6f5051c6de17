import { describe, expect, test } from "vitest";
import { accent } from "#plan/scalars/colour.js";
import { accentOf } from "../../src/compute/accent.js";
import { contrast } from "../contrast.js";

describe("the clinic's colour", () => {
  // The greys on either side of 4.5:1 on white, by the formula of WCAG 2.2 (4.54 and 4.48).
  test.each([
    ["#767676", []],
    ["#777777", ["colour-too-pale"]],
    ["#1C5B66", []],
    ["#ffff00", ["colour-too-pale"]],
    ["teal", ["colour-unreadable"]],
    ["#123", ["colour-unreadable"]],
    ["#12345g", ["colour-unreadable"]],
    ["#000000;}body{display:none", ["colour-unreadable"]],
  ])("%s", (text, faults) => {
    const { error } = accent.safeParse(text);
    expect(error?.issues.map((issue) => ("params" in issue ? issue.params?.["fault"] : issue.code)) ?? []).toEqual(
      faults,
    );
  });

  test("has a lighter sister for dark pages, which can be read there", () => {
    for (const light of ["#000000", "#1c5b66", "#7a0019", "#00008b", "#4b0082", "#767676", "#006400"]) {
      const { dark } = accentOf(light) ?? expect.fail();
      expect([light, contrast(dark, "#14181a") >= 4.5]).toEqual([light, true]);
    }
    expect(accentOf(undefined)).toBeNull();
  });
});
