import { expect, it } from "vitest";
import type { Visit } from "#compute/facts.js";
import { blocksIn, wordsOf } from "#handout/walk.js";
import { factsOf, handoutOf } from "../examples/examples.js";

const facts = factsOf("dog-cheek-abscess");
const isBooked = ({ certainty }: Visit) => certainty === "booked";

it("says that booked visits stand first only where some are booked and some are not", () => {
  const captionOf = (visits: Visit[]) => {
    const tables = [...blocksIn(handoutOf({ ...facts, course: { ...facts.course, visits } }, "en"))].flatMap((block) =>
      block.kind === "table" ? wordsOf(block.caption) : [],
    );
    return tables.find((caption) => caption.startsWith("Your visits"));
  };
  const { visits } = facts.course;
  expect(captionOf(visits)).toBe("Your visits, booked ones first");
  expect(captionOf(visits.filter(isBooked))).toBe("Your visits");
  expect(captionOf(visits.filter((visit) => !isBooked(visit)))).toBe("Your visits");
});
