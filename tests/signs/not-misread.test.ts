import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { homeLog } from "#compute/home-log.js";
import { noCourse } from "../costs/help.js";
import { care, ids, tables, told, wordsOf } from "./help.js";

const cat = "species: cat, sex: neutered male";
const dog = "species: dog, sex: female";
const of = (lines: readonly string[], patient?: string) => {
  const { signs, normal, steps, avoid, supplies, ends } = care(lines, patient);
  return [signs, normal, steps, avoid, supplies, ends].flatMap(ids);
};
const urgency = (lines: readonly string[], id: string, patient?: string) =>
  care(lines, patient).signs.find((sign) => sign.id === `signs.${id}`)?.urgency;

describe("a cat whose bladder was blocked", () => {
  const blocked = ["topic: urinary-blockage"];

  it("goes at once when little comes, or nothing for half a day", () => {
    expect(urgency(blocked, "no-urine", cat)).toBe("now");
    expect(urgency(blocked, "no-urine-hours", cat)).toBe("now");
  });

  it.each(["en", "en-GB"])("calls small amounts of urine nowhere normal (%s)", (tag) => {
    // Little at a time and often is how a cat that blocks again begins.
    expect(wordsOf(tag, "statements")["normal.pink-urine"]).not.toMatch(/small|little/i);
  });
});

describe("an animal that is fed by a tube", () => {
  const tube = (site: string) => [`topic: feeding-tube, site: ${site}, course: [recheck day 5-7]`];

  it("is not told off for eating nothing, nor offered food by mouth to see if it stays down", () => {
    const said = of([...tube("neck"), "topic: anaesthesia-recovery"], cat);
    const never = ["signs.not-eating", "signs.not-eating-young", "signs.eats-less", "steps.first-meal"];
    expect(said.filter((id) => never.includes(id))).toEqual([]);
    expect(said).toContain("signs.tube-missed");
    const { steps } = care(tube("neck"), cat);
    const log = homeLog(
      { discharged: "2026-03-02T16:30", statements: steps, medicines: [], course: noCourse, collar: null },
      tables.log,
    );
    expect(ids(log.rows)).not.toContain("ate");
    expect(ids(log.rows)).toContain("tube");
  });

  it("goes at once when a tube leaves the belly wall, and rings the same day when one leaves the neck", () => {
    expect(urgency(tube("left flank"), "tube-moved", cat)).toBe("now");
    expect(urgency(tube("neck"), "tube-moved", cat)).toBe("today");
  });
});

describe("a sore eye", () => {
  const eye = "topic: eye-ulcer-or-surgery, site: left eye";

  it("is red and half shut from the first day, so only what gets worse is a sign", () => {
    const said = of([eye, "topic: hot-spot, site: left cheek"]);
    expect(said).toEqual(expect.arrayContaining(["signs.eye-worse", "signs.eye-burst"]));
    expect(said.filter((id) => ["signs.eye-danger", "signs.eye-sore", "normal.eyelid-puffy"].includes(id))).toEqual([]);
    expect(urgency([eye], "eye-burst")).toBe("now");
  });

  it("of a dog is led on a harness: a collar raises the pressure in the eye (Pauli et al. 2006)", () => {
    expect(of([eye])).toEqual(expect.arrayContaining(["avoid.neck-lead", "supplies.harness"]));
    expect(of([eye], cat)).not.toContain("avoid.neck-lead");
  });
});

describe("a cat is no small dog", () => {
  it.each([
    "topic: splint-or-cast, site: left lower front leg, course: [splint change every 7 days until day 28]",
    "topic: orthopaedic-surgery, site: left thigh",
    "topic: open-wound-clinic-bandage, site: left hind paw, bandage: limb wrap, course: [change daily]",
    "topic: burn, site: back, bandage: body wrap",
  ])("no lead, no sling and no bag for the rain: %s", (line) => {
    const lead = ["steps.short-walks", "steps.cage-rest", "steps.sling", "steps.cover-outside", "supplies.lead"];
    expect(of([line], cat).filter((id) => lead.includes(id))).toEqual([]);
    expect(of([line], dog).filter((id) => lead.includes(id))).not.toEqual([]);
  });
});

describe("only what the place asks for", () => {
  const towel = ["steps.sling", "steps.rugs", "normal.limp", "signs.leg-worse", "normal.learning"];
  it.each([
    ["topic: orthopaedic-surgery, site: left jaw", []],
    ["topic: amputation, site: tail", []],
    ["topic: amputation, site: left thigh", ["steps.sling", "steps.rugs", "normal.learning"]],
    ["topic: orthopaedic-surgery, site: left thigh", ["steps.sling", "steps.rugs", "normal.limp", "signs.leg-worse"]],
  ])("%s", (line, said) =>
    expect(
      of([line])
        .filter((id) => towel.includes(id))
        .sort(),
    ).toEqual([...said].sort()),
  );

  it("asks nobody to look below a bandage", () => {
    const below = ["signs.wound-worse", "signs.wound-pus", "signs.sore-spreads", "steps.look-wound"];
    for (const line of [
      "topic: burn, site: back, bandage: body wrap",
      "topic: bite-wound, site: back, bandage: body wrap",
      "topic: packing-strip, site: back, bandage: tie-over, course: [packing removal day 1-3]",
    ])
      expect([line, of([line]).filter((id) => below.includes(id))]).toEqual([line, []]);
    expect(of(["topic: burn, site: back"])).toEqual(expect.arrayContaining(below));
  });
});

describe("contradictions that hide between two lines of care", () => {
  const diabetic = "species: dog, sex: female, conditions: [diabetic]";
  it.each([
    ["meals after an anaesthetic and insulin", ["topic: anaesthesia-recovery"], diabetic],
    ["two foods", ["topic: urinary-blockage", "topic: vomiting-diarrhoea"], cat],
    [
      "a compress on a patch that must dry",
      ["topic: abscess-home-care, site: back", "topic: hot-spot, site: back"],
      dog,
    ],
    ["a compress on a burn", ["topic: abscess-home-care, site: back", "topic: burn, site: back"], dog],
    [
      "a harness on a wound of the chest",
      ["topic: bite-wound, site: neck", "topic: bite-wound, site: left chest"],
      dog,
    ],
    [
      "a wound that is open and closed",
      ["topic: sutured-wound, site: back", "topic: packing-strip, site: back, course: [packing removal day 1-3]"],
      dog,
    ],
  ])("%s", (_, lines, patient) =>
    expect(told(lines, patient).map((one) => one.split(" ")[0])).toContain("care-contradicts"),
  );

  it("the stairs a collar allows are those that rest allows", () => {
    const { avoid = {}, collar = {} } = JSON.parse(readFileSync("locales/en/statements.json", "utf8"));
    expect(collar.stairs).toMatch(/block the stairs if you can/i);
    expect(avoid.jump).toMatch(/no stairs if there is another way/i);
  });
});
