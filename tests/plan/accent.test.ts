import { describe, expect, test } from "vitest";
import { accent } from "#plan/scalars/colour.js";
import { accentOf } from "../../src/compute/accent.js";

/** Relative luminance and contrast as WCAG 2.2 defines them, worked out here beside the library's. */
const linear = (channel: number) => (channel <= 0.04045 ? channel / 12.92 : ((channel + 0.055) / 1.055) ** 2.4);
const luminance = (colour: string) => {
  const [r = 0, g = 0, b = 0] = [1, 3, 5].map((at) => linear(Number.parseInt(colour.slice(at, at + 2), 16) / 255));
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
};
const contrast = (one: string, other: string) => {
  const [dark = 0, light = 0] = [luminance(one), luminance(other)].sort((a, b) => a - b);
  return (light + 0.05) / (dark + 0.05);
};

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
