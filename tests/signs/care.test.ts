import { describe, expect, it } from "vitest";
import { care, ids, tables } from "./help.js";

const packed =
  "topic: open-wound-clinic-bandage, site: left cheek, bandage: tie-over, course: [change every day for 3-5 days]";
const home = "topic: abscess-home-care, site: tail base";
const cat = "species: cat, sex: spayed female";
const urgent = (signs: { id: string; urgency: string }[]) => ids(signs.filter(({ urgency }) => urgency === "now"));

describe("a packed abscess on a dog's cheek", () => {
  const facts = care([packed]);

  it("understands topic, site, side and bandage", () => {
    expect(facts.care).toMatchObject([
      { topic: "open-wound-clinic-bandage", site: "cheek", side: "left", bandage: "tie-over" },
    ]);
    expect(ids(facts.care[0]?.done ?? [])).toContain("done.tie-over");
  });

  it("sends the owner off at once for breath, blood, swelling, the eye, and a bandage over the nose", () => {
    expect(urgent(facts.signs)).toEqual([
      "signs.breathing",
      "signs.collapse",
      "signs.bandage-airway",
      "signs.throat-swelling",
      "signs.bleeding",
      "signs.eye-danger",
      "signs.swallowed",
    ]);
  });

  it("has the owner look twice a day, and leaves the bandage to the clinic", () => {
    // Public practice sheets: check twice daily or more; a bandage that slipped is not put back by the owner.
    expect(facts.steps.find(({ id }) => id === "steps.check-bandage")?.times).toEqual(["morning", "evening"]);
    expect(ids(facts.avoid)).toEqual(expect.arrayContaining(["avoid.put-back", "avoid.gauze", "avoid.touch-bandage"]));
    expect(ids(facts.steps)).not.toContain("steps.warm-compress");
  });

  it("tells what is normal near the eye", () => {
    expect(ids(facts.normal)).toContain("normal.eyelid-puffy");
  });
});

describe("a small abscess at a cat's tail base, looked after at home", () => {
  const facts = care([home], cat);

  it("has warm compresses three times a day with their minutes", () => {
    expect(facts.steps.find(({ id }) => id === "steps.warm-compress")).toMatchObject({
      times: ["morning", "midday", "evening"],
      values: { minutes: { value: "5", unit: "min" } },
    });
  });

  it("adds what a cat needs, and nothing of bandages, eyes or ears", () => {
    expect(ids(facts.steps)).toEqual(expect.arrayContaining(["steps.indoors", "steps.paper-litter"]));
    const all = [facts.signs, facts.steps, facts.normal, facts.avoid].flatMap(ids);
    expect(all.filter((id) => /bandage|eye|ear-|lead/.test(id))).toEqual(["avoid.own-bandage"]);
  });
});

describe("bandage signs against the public practice sheets", () => {
  // The sheets give a range for each; ours is never laxer than the laxest of them.
  const facts = care([
    "topic: open-wound-clinic-bandage, site: left front paw, bandage: limb wrap, course: [change daily]",
  ]);
  const urgencyOf = (id: string) => facts.signs.find((sign) => sign.id === `signs.${id}`)?.urgency;

  it.each([
    ["toes", "now"],
    ["bandage-wet", "today"],
    ["bandage-off", "today"],
    ["bandage-smell", "today"],
    ["bandage-stain", "today"],
    ["bandage-chewing", "today"],
    ["leg-use", "today"],
    ["bandage-edge", "today"],
  ])("%s: %s", (id, urgency) => expect(urgencyOf(id)).toBe(urgency));

  it("takes the rain cover off within the shorter of the two times, 30 minutes", () => {
    expect(facts.steps.find(({ id }) => id === "steps.cover-outside")?.values).toEqual({
      minutes: { value: "30", unit: "min" },
    });
  });
});

describe("what a site and an animal add", () => {
  const signs = (site: string, patient?: string) => ids(care([`topic: bite-wound, site: ${site}`], patient).signs);

  it.each([
    ["left ear", "signs.head-tilt"],
    ["right eyelid", "signs.eye-sore"],
    ["neck", "signs.throat-swelling"],
    ["left chest", "signs.chest-air"],
    ["belly", "signs.organ-out"],
    ["left jaw", "signs.mouth-sore"],
    ["perineum", "signs.straining-poop"],
  ])("%s: %s", (site, sign) => {
    expect(signs(site)).toContain(sign);
    expect(signs("back")).not.toContain(sign);
  });

  it("watches the urine of a male cat hurt under the tail", () => {
    expect(signs("perineum", "species: cat, sex: neutered male")).toContain("signs.no-urine");
    expect(signs("perineum", cat)).not.toContain("signs.no-urine");
  });

  it("waits less long for a young animal to eat", () => {
    expect(signs("back", "species: cat, sex: female, born: 2025-12")).toContain("signs.not-eating-young");
    expect(signs("back", "species: cat, sex: female, born: 2025-09")).not.toContain("signs.not-eating-young");
    expect(signs("back")).not.toContain("signs.not-eating-young");
  });

  it("asks before insulin, and keeps a short nose cool", () => {
    expect(signs("back", "species: dog, sex: female, takes: [Insulin glargine]")).toContain("signs.no-food-insulin");
    const pug = care(["topic: anaesthesia-recovery"], "species: dog, sex: female, breed: Pug cross");
    expect(ids(pug.steps)).toContain("steps.cool-room");
  });
});

it("ranks signs: now, today, visit, and within each as the table does", () => {
  const table = tables.statements.signs.map(({ id }) => `signs.${id}`);
  const facts = care([packed, "topic: vomiting-diarrhoea"]);
  const ranks = facts.signs.map(({ urgency }) => ["now", "today", "visit"].indexOf(urgency));
  expect(ranks).toEqual(ranks.toSorted());
  for (const urgency of ["now", "today", "visit"]) {
    const order = facts.signs.filter((sign) => sign.urgency === urgency).map(({ id }) => table.indexOf(id));
    expect(order).toEqual(order.toSorted((a, b) => a - b));
  }
});

it("lets the gravest voice win", () => {
  const [first, ...others] = tables.topics.filter(({ id }) => id === "bite-wound");
  if (!first) throw new Error("no bite-wound");
  expect(others).toEqual([]);
  const graver = { ...first, signs: [...first.signs, { id: "dull", urgency: "now" as const }] };
  const { signs } = care(["topic: bite-wound, site: back"], undefined, { ...tables, topics: [graver] });
  expect(signs.find(({ id }) => id === "signs.dull")?.urgency).toBe("now");
});
