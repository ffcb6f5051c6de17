/** A hint is copied by whoever is in a hurry: none holds a dose, an amount, a day or a number of days to copy. */
import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";

const tags = readdirSync("locales").filter((tag) => readdirSync(`locales/${tag}`).includes("problems"));
type Told = Record<string, Record<string, string> | string>;

/** Every hint of a language as "code.hint_form: words", in which nothing is left out. */
const hintsOf = (tag: string) =>
  readdirSync(`locales/${tag}/problems`).flatMap((file) => {
    const told = JSON.parse(readFileSync(`locales/${tag}/problems/${file}`, "utf8")) as Told;
    return Object.entries(told).flatMap(([code, forms]) =>
      Object.entries(typeof forms === "string" ? {} : forms)
        .filter(([form]) => form.startsWith("hint"))
        .map(([form, words]) => `${code}.${form}: ${words}`),
    );
  });

const unit = "(?:mg|mL|IU|kg|lb|g|cm|tablets?|capsules?|drops?|units?|bottles?|patch(?:es)?|days?|weeks?)";
const amount = new RegExp(`\\d[\\s\\u00a0]?${unit}(?![a-z])|\\b(?:give|dose|dispense|container|day|at most):? \\d`);
const day = /\b20\d\d-\d\d/;
/** What is no example: which day is the first. */
const said = ["course-day-not-after-discharge"];

describe.each(tags)("%s", (tag) => {
  test("has no hint with an amount or a day to copy", () => {
    const hints = hintsOf(tag).filter((hint) => !said.some((code) => hint.startsWith(`${code}.`)));
    expect(hints.length).toBeGreaterThan(200);
    expect(hints.filter((hint) => amount.test(hint) || day.test(hint))).toEqual([]);
  });
});

test("such a hint is seen", () => {
  for (const words of ["(give: 2 mL)", "dispense: 14 tablets", "for: 7 days", "at most 3 a day", "recheck day 10"])
    expect(words).toMatch(amount);
  expect("until: 2026-03-09").toMatch(day);
});
