import { expect, it } from "vitest";
import { fill, placeholders } from "#locale/words.js";

it("fills every placeholder, whatever its name", () => {
  const message = "From {{low}} to {{without-high}}.";
  expect(placeholders(message)).toEqual(["low", "without-high"]);
  expect(fill(message, (name) => `<${name}>`)).toBe("From <low> to <without-high>.");
});
