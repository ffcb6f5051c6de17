import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { computeCare } from "#compute/signs/care.js";
import { collarKinds } from "#problems/collar.js";
import { signKinds } from "#problems/signs.js";
import { planWith, tables, told } from "./help.js";

const first = (line: string, patient?: string) => computeCare(planWith([line], patient), tables).problems[0];

describe("care that cannot be understood is told where it stands", () => {
  it.each([
    ["topic: abscess-home-car, site: left cheek", "topic-unknown plan.yaml:8:14"],
    ["topic: urinary-blockage", "topic-not-for-species plan.yaml:8:14"],
    ["topic: neuter-dog", "topic-not-for-sex plan.yaml:8:14"],
    ["topic: bite-wound", "site-missing plan.yaml:8:14"],
    ["topic: spay-dog, site: belly", "site-not-for-topic plan.yaml:8:30"],
    ["topic: bite-wound, site: left chekc", "site-unknown plan.yaml:8:37"],
    ["topic: bite-wound, site: cheek", "side-missing plan.yaml:8:32"],
    ["topic: bite-wound, site: left right cheek", "side-twice plan.yaml:8:32"],
    ["topic: bite-wound, site: left tail", "side-not-for-site plan.yaml:8:32"],
    ["topic: abscess-home-care, site: back, bandage: tie-over", "bandage-not-for-topic plan.yaml:8:54"],
    ["topic: bite-wound, site: back, bandage: tieup", "bandage-unknown plan.yaml:8:47"],
    ["topic: bite-wound, site: left cheek, bandage: limb wrap", "bandage-not-for-site plan.yaml:8:53"],
  ])("%s: %s", (line, problem) => expect(told([line])).toContain(problem));

  it("asks for a bandage and for visits where they are needed", () => {
    expect(told(["topic: open-wound-clinic-bandage, site: back"])).toEqual([
      "bandage-missing plan.yaml:8:14",
      "course-missing plan.yaml:8:14",
    ]);
  });

  it("tells everything at once", () => {
    const lines = ["topic: bite-wund, site: left chekc, bandage: tieup", "topic: neuter-cat, site: back"];
    expect(told(lines).map((one) => one.split(" ")[0])).toEqual([
      "topic-unknown",
      "site-unknown",
      "bandage-unknown",
      "topic-not-for-species",
      "topic-not-for-sex",
      "site-not-for-topic",
    ]);
  });

  it("names what is nearest", () => {
    expect(first("topic: abcess home care, site: back")?.values).toMatchObject({ near: ["abscess-home-care"] });
    expect(first("topic: bite-wound, site: left chekc")?.values).toMatchObject({
      given: "chekc",
      near: expect.arrayContaining(["cheek"]),
    });
    expect(first("topic: bite-wound, site: back, bandage: tie-ovr")?.values).toMatchObject({ near: ["tie-over"] });
    expect(first("topic: bite-wound, site: zzzzzzzz")?.values).toMatchObject({ near: [] });
    const bandaged = first("topic: abscess-home-care, site: back, bandage: tie-over")?.values as { known: string[] };
    expect(bandaged.known).toContain("open-wound-clinic-bandage");
    expect(bandaged.known).not.toContain("abscess-home-care");
  });

  it("reads names however they are spaced", () => {
    expect(told(["topic: Bite wound, site: Cheek left"])).toEqual([]);
    expect(told(['topic: bite_wound, site: "tail base"'])).toEqual([]);
    const whereOf = (site: string) => {
      const [care] = computeCare(planWith([`topic: bite-wound, site: "${site}"`]), tables).value?.care ?? [];
      return [care?.side, care?.site];
    };
    expect(whereOf("rump, left side")).toEqual(["left", "rump"]);
    expect(whereOf("right side of the rump")).toEqual(["right", "rump"]);
    expect(whereOf("R side of neck")).toEqual(["right", "neck"]);
    // The side of an animal is its flank.
    expect(whereOf("left side")).toEqual(["left", "flank"]);
  });
});

describe("one care with another", () => {
  const open = "topic: open-wound-clinic-bandage, site: left flank, bandage: body wrap, course: [change daily]";

  it("asks about the same topic at the same site, but not at another", () => {
    expect(told(["topic: bite-wound, site: left cheek", "topic: bite-wound, site: left cheek"])).toEqual([
      "topic-twice plan.yaml:9:14",
    ]);
    expect(told(["topic: bite-wound, site: left cheek", "topic: bite-wound, site: right cheek"])).toEqual([]);
  });

  it("tells of a warm compress under a bandage that must stay dry, with both places", () => {
    const plan = planWith([open, "topic: abscess-home-care, site: left flank"]);
    const wet = computeCare(plan, tables).problems.find(
      ({ values }) => "one" in values && values.one === "warm compress",
    );
    expect(wet).toMatchObject({
      code: "care-contradicts",
      severity: "ask",
      at: { line: 8 },
      values: { one: "warm compress", oneTopic: "abscess-home-care", oneAt: "plan.yaml:9:14", other: "keep dry" },
    });
  });

  it("tells what the care says against what the animal is once, and where the plan says that", () => {
    const patient = "species: cat, sex: female, conditions: [diabetic]";
    const plan = planWith(["topic: feeding-tube, site: left neck", "topic: anaesthesia-recovery"], patient);
    const found = computeCare(plan, tables).problems.filter(({ code }) => code === "care-contradicts");
    expect(found.map(({ values }) => values)).toEqual([
      {
        ...{ one: "first meal", oneTopic: "anaesthesia-recovery", oneAt: "plan.yaml:9:14" },
        ...{ other: "diabetic meals", otherTopic: "diabetic" },
      },
    ]);
  });

  it("leaves a compress alone that is on the other side, or elsewhere", () => {
    expect(told([open, "topic: abscess-home-care, site: right flank"])).toEqual([]);
    expect(told([open, "topic: abscess-home-care, site: tail base"])).toEqual([]);
  });

  it("tells of food rules that fight, wherever they are", () => {
    expect(told(["topic: vomiting-diarrhoea", "topic: dental-extraction"])).toEqual([
      "care-contradicts plan.yaml:9:14",
    ]);
  });
});

it.each(["en", "es"])("words each problem in %s", (tag) => {
  for (const [file, kinds] of Object.entries({ signs: signKinds, collar: collarKinds })) {
    const words = JSON.parse(readFileSync(`locales/${tag}/problems/${file}.json`, "utf8"));
    expect(Object.keys(words).sort()).toEqual(Object.keys(kinds).sort());
    for (const told of Object.values(words))
      expect(told).toMatchObject({ what: expect.any(String), hint: expect.any(String) });
  }
});
