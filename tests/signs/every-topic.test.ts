import { describe, expect, it } from "vitest";
import { computeCare } from "#compute/signs/care.js";
import { stops } from "#problems/problem.js";
import { alwaysSaid } from "#tables/always-said.js";
import { idsOf } from "#tables/statements.js";
import type { Topic } from "#tables/topic.js";
import { care, ids, planWith, seen, tables, told } from "./help.js";

/** Each topic as a plan would have it: on a place where it may be, under the bandage it needs, with its usual course. */
const places: Record<string, string> = {
  "ear-haematoma": "left ear",
  "eye-ulcer-or-surgery": "left eye",
  amputation: "left thigh",
  "splint-or-cast": "left lower front leg",
  "orthopaedic-surgery": "left thigh",
};
function lineOf({ id, site, bandage, usualCourse }: Topic): string {
  const where = site === "needed" ? [`site: ${places[id] ?? "left flank"}`] : [];
  const under = bandage === "needed" ? ["bandage: body wrap"] : [];
  return [`topic: ${id}`, ...where, ...under, `course: [${usualCourse.map((line) => `"${line}"`).join(", ")}]`].join(
    ", ",
  );
}

const animals = (["dog", "cat"] as const).flatMap((species) =>
  (["female", "male"] as const).map((sex) => ({ species, sex, written: `species: ${species}, sex: ${sex}` })),
);
const fitting = ({ species, sex }: (typeof animals)[number]) =>
  tables.topics.filter((topic) => topic.species.includes(species) && topic.sex.includes(sex));

describe.each(animals)("a $sex $species", (animal) => {
  it.each(fitting(animal).map((topic) => [topic.id, topic] as const))(
    "%s: says all it must, and no problem stands in its own way",
    (_, topic) => {
      const { value, problems } = computeCare(planWith([lineOf(topic)], animal.written), tables);
      expect(problems.map(seen)).toEqual([]);
      if (!value) throw new Error("no care");
      const lists = { ...value, done: value.care.flatMap(({ done }) => done) };
      for (const list of ["done", "steps", "normal", "signs", "avoid", "supplies", "ends"] as const)
        expect([list, lists[list].length > 0]).toEqual([list, true]);
      expect(new Set(value.signs.map(({ urgency }) => urgency))).toEqual(new Set(["now", "today", "visit"]));
    },
  );

  it("what its sheet says of a topic is on every page of it, or a stronger word for it", () => {
    for (const topic of fitting(animal)) {
      const { value } = computeCare(planWith([lineOf(topic)], animal.written), tables);
      if (!value) throw new Error(topic.id);
      const page = new Set([
        ...(["steps", "normal", "signs", "avoid", "supplies", "ends"] as const).flatMap((list) => ids(value[list])),
        ...value.care.flatMap(({ done }) => ids(done)),
      ]);
      const stronger = tables.stronger.filter(({ said }) => page.has(said)).flatMap(({ needless }) => needless);
      const sheet = alwaysSaid(topic, tables.additions, tables.statements);
      const missing = idsOf(sheet).filter((id) => !page.has(id) && !stronger.includes(id));
      expect([topic.id, missing]).toEqual([topic.id, []]);
      expect([topic.id, idsOf(sheet).filter((id) => id === "signs.collapse")]).toEqual([topic.id, ["signs.collapse"]]);
    }
  });

  it("every two topics: nothing twice, nothing needless, no contradiction untold, told with both places", () => {
    const topics = fitting(animal);
    for (const [i, one] of topics.entries())
      for (const other of topics.slice(i + 1)) {
        const pair = `${one.id} + ${other.id}`;
        const { value, problems } = computeCare(planWith([lineOf(one), lineOf(other)], animal.written), tables);
        expect([pair, stops(problems)]).toEqual([pair, false]);
        if (!value) throw new Error(pair);
        const said = (["steps", "normal", "signs", "avoid", "supplies", "ends"] as const).flatMap((list) =>
          ids(value[list]),
        );
        const all = new Set([...said, ...value.care.flatMap(({ done }) => ids(done))]);
        expect([pair, said.length]).toEqual([pair, new Set(said).size]);
        for (const { said: strong, needless } of tables.stronger)
          if (all.has(strong)) expect([pair, needless.filter((id) => all.has(id))]).toEqual([pair, []]);
        const contradictions = problems.filter(({ code }) => code === "care-contradicts");
        const untold = tables.conflicts.filter(
          ({ where, one, other }) =>
            where === "anywhere" &&
            [one, other].every((side) => side.some((id) => all.has(id))) &&
            contradictions.length === 0,
        );
        expect([pair, untold.map(({ id }) => id)]).toEqual([pair, []]);
        for (const { at, values } of contradictions)
          expect([at.line, values]).toEqual([
            expect.any(Number),
            expect.objectContaining({ oneAt: expect.stringMatching(/^plan\.yaml:\d+:\d+$/) }),
          ]);
      }
  });
});

it("every topic that needs visits has a course to start from", () =>
  expect(tables.topics.filter(({ course, usualCourse }) => course === "needed" && usualCourse.length === 0)).toEqual(
    [],
  ));

it("says until when a collar stays on in words a plan may use", () => {
  const events = tables.collars.until.map(({ event }) => event);
  expect(tables.topics.flatMap(({ usualUntil }) => usualUntil ?? []).filter((one) => !events.includes(one))).toEqual(
    [],
  );
});

describe("what the animal is", () => {
  const of = (patient: string, line = "topic: mass-removal, site: back") => {
    const { signs, steps, avoid, supplies } = care([line], patient);
    return [signs, steps, avoid, supplies].flatMap(ids);
  };
  const dog = "species: dog, sex: female";

  it.each([
    ["pregnant", ["signs.pregnant-fluid", "signs.labour-stuck", "avoid.pregnant-medicine"]],
    ["nursing", ["signs.milk-hot", "steps.nursing-young", "steps.nursing-awake"]],
    ["diabetes", ["signs.sugar-low", "signs.no-food-insulin", "steps.diabetic-meals", "supplies.honey"]],
    ["flat-faced", ["signs.short-nose-breath", "steps.cool-room", "avoid.heat"]],
  ])("%s, where the plan says so", (condition, said) => {
    expect(of(`${dog}, conditions: [${condition}]`)).toEqual(expect.arrayContaining(said));
    expect(of(dog).filter((id) => said.includes(id))).toEqual([]);
  });

  it("a short nose is not kept warm, and breathes no steam", () => {
    expect(of(`${dog}, breed: Pug, born: 2010-01`)).not.toContain("steps.warm-bed");
    expect(of(`${dog}, breed: Pug, born: 2010-01`)).not.toContain("steps.old-warm");
    expect(of(`${dog}, breed: Pug`, "topic: respiratory-infection")).not.toContain("steps.steam");
    expect(of(dog, "topic: respiratory-infection")).toContain("steps.steam");
  });

  it("young and old follow from the day it was born", () => {
    expect(of(`${dog}, born: 2025-12`)).toEqual(expect.arrayContaining(["signs.young-limp", "steps.young-meals"]));
    expect(of(`${dog}, born: 2015-01`)).toEqual(expect.arrayContaining(["signs.old-lost", "steps.old-warm"]));
    expect(of(`${dog}, born: 2020-01`).filter((id) => /young|old-/.test(id))).toEqual([]);
  });

  it("asks where home care may not suit it, and stops at what cannot be", () => {
    expect(told(["topic: vomiting-diarrhoea"], `${dog}, born: 2026-01`)).toContain("topic-doubtful plan.yaml:8:14");
    expect(told(["topic: spay-dog"], `${dog}, conditions: [pregnant]`)).toContain("topic-doubtful plan.yaml:8:14");
    expect(told(["topic: spay-dog"], `${dog}, conditions: [pregnnt]`).join()).toContain(
      "condition-unknown plan.yaml:4:",
    );
    expect(told(["topic: neuter-dog"], "species: dog, sex: male, conditions: [nursing]").join()).toContain(
      "condition-not-for-sex plan.yaml:4:",
    );
  });
});

describe("each place adds what is right for it", () => {
  const at = (site: string) => {
    const { signs, normal, steps } = care([`topic: bite-wound, site: ${site}`]);
    return [signs, normal, steps].flatMap(ids);
  };
  it.each([
    [
      "left side of the face",
      "face",
      ["normal.eyelid-puffy", "normal.slow-chew", "signs.eye-sore", "signs.eye-danger", "signs.face-droop"],
    ],
    ["ear", "left ear", ["normal.head-shaking", "signs.ear-sore", "signs.head-tilt"]],
    ["neck", "neck", ["normal.tube-neck-stiff", "signs.throat-swelling"]],
    ["chest", "left chest", ["normal.chest-sore", "signs.chest-air"]],
    ["flank", "left flank", ["normal.low-swelling", "signs.organ-out", "signs.belly-tight"]],
    [
      "above the elbow",
      "left upper front leg",
      ["normal.leg-stiff", "normal.low-swelling", "signs.leg-use", "signs.foot-cold"],
    ],
    ["below the elbow", "left lower front leg", ["normal.leg-stiff", "signs.leg-use", "signs.foot-cold"]],
    ["paw", "left front paw", ["steps.wipe-paw", "normal.leg-stiff", "signs.foot-cold"]],
    ["tail", "tail", ["normal.tail-low", "signs.tail-limp"]],
    ["perineum", "perineum", ["normal.slow-poop", "signs.straining-poop", "steps.wipe-rear"]],
  ])("%s", (_, site, said) => {
    expect(at(site)).toEqual(expect.arrayContaining(said));
    expect(at("back").filter((id) => said.includes(id) && id !== "normal.low-swelling")).toEqual([]);
  });

  it("asks nothing of a leg that is gone", () =>
    expect(
      ids(care(["topic: amputation, site: left thigh"]).signs).filter((id) => /leg-use|foot-cold/.test(id)),
    ).toEqual([]));
});

describe("the clinician's own words beside ours", () => {
  const line = "topic: orthopaedic-surgery, site: left thigh";
  const words = (feeding: string, care = line) =>
    computeCare(planWith([care], undefined, `feeding: [${JSON.stringify(feeding)}]\n`), tables).problems;

  it.each([
    ["Short walks twice a day.", line, "walks"],
    ["Bathe her on day 5.", line, "Bathe"],
    ["Kibble as before.", "topic: dental-extraction", "Kibble"],
    ["Give treats for each tablet.", "topic: vomiting-diarrhoea", "treats"],
    [
      "A warm compress each night.",
      "topic: open-wound-clinic-bandage, site: back, bandage: body wrap, course: [change daily]",
      "warm compress",
    ],
  ])("%s", (text, care, given) => {
    const found = words(text, care).filter(({ code }) => code === "words-contradict");
    expect(found.map(({ values }) => values)).toContainEqual(
      expect.objectContaining({
        given: expect.stringMatching(new RegExp(given.replace("warm ", "(warm )?"))),
        at: expect.stringMatching(/^plan\.yaml:8:/),
      }),
    );
  });

  it.each(["No walks.", "Never bathe her.", "Soft food only."])("lets “%s” stand", (text) =>
    expect(words(text).filter(({ code }) => code === "words-contradict")).toEqual([]),
  );
});
