import { expect, it } from "vitest";
import { blocksIn, linesOf, wordsOf } from "#handout/walk.js";
import { courseOf, kinds } from "../visits/help.js";
import { dog } from "./fixture.js";
import { composed, locales } from "./shipped.js";

/** A change that would be sure, but for a decision; one of it for every kind of visit that may be that decision. */
const course = courseOf({ course: ["maybe drain out day 3", "change every day until drain out or day 3"] });
const spared = course.visits.find(({ unless }) => unless !== null) ?? expect.fail();
const visits = kinds.map(({ id }) => ({ ...spared, id: `spared-by-${id}`, unless: id }));

/** What the table of visits says, and the words that are missing. */
function tableIn(language: string) {
  const { value, problems } = composed({ ...dog, course: { ...course, visits } }, language);
  const tables = value ? [...blocksIn(value)].filter(({ kind }) => kind === "table") : [];
  return {
    rows: tables.flatMap(linesOf).map(wordsOf),
    missing: problems.flatMap(({ code, values }) => (code === "words-missing" ? [values] : [])),
  };
}

it("a visit that a decision would spare is said with that decision", () => {
  const { rows } = tableIn("en");
  expect(rows).toContain("bandage change, if still open");
  expect(rows).toContain("bandage change, if still on");
  expect(rows).toContain("bandage change, only before drain out");
});

it.each(locales.tags)("it has its words in %s, whatever is decided", (tag) => expect(tableIn(tag).missing).toEqual([]));
