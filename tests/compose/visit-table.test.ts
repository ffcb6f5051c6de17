import { expect, it } from "vitest";
import type { Purpose, Visit } from "#compute/facts.js";
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

it("of two visits that may begin on one day the one that must be sooner stands first", () => {
  const [, ...later] = facts.course.visits;
  const [visit] = later.filter(({ earliest, latest }) => earliest !== latest);
  if (!visit) throw new Error("a visit of the example has several days");
  const daysOf = (visits: Visit[]) =>
    [...blocksIn(handoutOf({ ...facts, course: { ...facts.course, visits } }, "en"))]
      .flatMap((block) =>
        block.kind === "table" && wordsOf(block.caption).startsWith("Your visits") ? block.rows : [],
      )
      .map(([when]) => wordsOf(when?.inlines ?? []));
  const onOneDay = { ...visit, latest: visit.earliest };
  const inOrder = daysOf([onOneDay, visit]);
  expect(new Set(inOrder).size).toBe(2);
  expect(daysOf([visit, onOneDay])).toEqual(inOrder);
});

it("where there are two wounds, a visit says which it is for; all it is for, where it is for both", () => {
  const [visit] = facts.course.visits;
  const [purpose] = visit?.purposes ?? [];
  if (!visit || !purpose) throw new Error("the example has visits");
  const cheek = { ...purpose, where: { site: "cheek", side: "left" as const } };
  const paw = { ...purpose, where: { site: "hind-paw", side: "right" as const } };
  const recheck = { ...paw, kind: "recheck" };
  const wordsFor = (...purposes: Purpose[]) => {
    const course = { ...facts.course, visits: [{ ...visit, purposes }] };
    const [table] = [...blocksIn(handoutOf({ ...facts, course }, "en"))].filter(
      (block) => block.kind === "table" && wordsOf(block.caption).startsWith("Your visits"),
    );
    return table?.kind === "table" ? wordsOf(table.rows[0]?.[1]?.inlines ?? []) : null;
  };
  expect(wordsFor(cheek)).toBe("bandage change (left cheek), booked");
  expect(wordsFor(cheek, paw)).toBe("bandage change (left cheek and right hind paw), booked");
  expect(wordsFor(cheek, cheek)).toBe("bandage change (left cheek), booked");
  expect(wordsFor(cheek, recheck)).toBe("bandage change (left cheek) and recheck (right hind paw), booked");
  expect(wordsFor(purpose)).toBe("bandage change, booked");
});
