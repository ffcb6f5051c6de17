import fc from "fast-check";
import { expect, it } from "vitest";
import { computeCare } from "#compute/signs/care.js";
import { stops } from "#problems/problem.js";
import type { Topic } from "#tables/topic.js";
import { ids, planWith, tables } from "./help.js";

const words = (slug: string) => slug.replaceAll("-", " ");

/** A line of care that the topic accepts, on some site and under some bandage. */
const line = (topic: Topic) =>
  fc
    .record({
      site: fc.constantFrom(...tables.sites),
      side: fc.constantFrom("left ", "right "),
      bandage: fc.constantFrom(...tables.bandages),
      bandaged: fc.boolean(),
    })
    .map(({ site, side, bandage, bandaged }) => {
      const where = topic.site === "none" ? [] : [`site: ${site.sides === "none" ? "" : side}${words(site.id)}`];
      const under =
        topic.bandage === "needed" || (topic.bandage === "may" && bandaged) ? [`bandage: ${bandage.id}`] : [];
      return [`topic: ${topic.id}`, ...where, ...under].join(", ");
    });

const animal = fc.constantFrom(
  { species: "dog", sex: "female" },
  { species: "dog", sex: "male" },
  { species: "cat", sex: "female" },
  { species: "cat", sex: "male" },
);

const cases = animal.chain(({ species, sex }) => {
  const fitting = tables.topics.filter(
    (topic) => topic.species.some((one) => one === species) && topic.sex.some((one) => one === sex),
  );
  return fc.record({
    patient: fc.constant(`species: ${species}, sex: ${sex}`),
    lines: fc.array(fc.constantFrom(...fitting).chain(line), { minLength: 2, maxLength: 3 }),
  });
});

const merged = ["steps", "normal", "signs", "avoid", "supplies", "ends"] as const;
const lists = ["done", ...merged] as const;

it("merges any topics: nothing twice, nothing lost that a stronger statement does not say, and in one order whoever speaks first", () => {
  fc.assert(
    fc.property(cases, ({ patient, lines }) => {
      const { value, problems } = computeCare(planWith(lines, patient), tables);
      expect(stops(problems)).toBe(false);
      if (!value) throw new Error("no facts");
      for (const list of merged) expect(new Set(ids(value[list])).size).toBe(value[list].length);
      const all = new Set([
        ...merged.flatMap((list) => ids(value[list])),
        ...value.care.flatMap(({ done }) => ids(done)),
      ]);
      for (const { topic, done } of value.care) {
        const held = { ...value, done };
        const row = tables.topics.find(({ id }) => id === topic);
        for (const list of lists)
          for (const entry of row?.[list] ?? []) {
            const id = `${list}.${typeof entry === "string" ? entry : entry.id}`;
            const stronger = tables.stronger.some(({ said, needless }) => needless.includes(id) && all.has(said));
            if (stronger) expect(all).not.toContain(id);
            else expect(held[list].find((one) => one.id === id)?.topics).toContain(topic);
          }
      }

      const turned = computeCare(planWith(lines.toReversed(), patient), tables).value;
      for (const list of merged) expect(ids(turned?.[list] ?? [])).toEqual(ids(value[list]));
    }),
    { numRuns: 150 },
  );
});

it("tells each pair of its table that can be told wherever it is", () => {
  const anywhere = tables.conflicts.filter(({ where }) => where === "anywhere");
  fc.assert(
    fc.property(cases, ({ patient, lines }) => {
      const { value, problems } = computeCare(planWith(lines, patient), tables);
      const said = merged.flatMap((list) => ids(value?.[list] ?? []));
      const both = anywhere.some(({ one, other }) =>
        [one, other].every((side) => side.some((id) => said.includes(id))),
      );
      if (both) expect(problems.map(({ code }) => code)).toContain("care-contradicts");
    }),
    { numRuns: 100 },
  );
});

it("no topic contradicts itself, on any site and under any bandage", () => {
  fc.assert(
    fc.property(cases, ({ patient, lines: [one = ""] }) => {
      const told = computeCare(planWith([one], patient), tables).problems;
      expect(told.filter(({ code }) => code === "care-contradicts")).toEqual([]);
    }),
    { numRuns: 100 },
  );
});
