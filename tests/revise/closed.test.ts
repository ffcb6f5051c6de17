/** A wound that is closed, and a bandage that comes off: what the next paper tells of them, and of a second wound. */
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, it, test } from "vitest";
import { blocksIn, linesOf, wordsOf } from "#handout/walk.js";
import { compose, compute, editPlan, type Facts, mergeVisit, type Plan, readPlan, revise } from "../../src/index.js";
import { house } from "../examples/examples.js";

const home = fileURLToPath(new URL("../../examples/", import.meta.url));
const text = (file: string) => readFileSync(home + file, "utf8");
const source = (file: string, content = text(file)) => ({ file, bytes: new TextEncoder().encode(content) });
const others = { clinic: source("clinic.yaml"), prices: source("prices.yaml") };

type Paper = { text: string; plan: Plan; facts: Facts; told: string[] };

function read(written: string, earlier: Plan[] = []): Paper {
  const { value: plan, problems } = readPlan(
    { plan: source("plan.yaml", written), ...others },
    { today: "2026-03-02" },
  );
  const made = plan && compute(plan, house, earlier);
  if (!plan || !made?.value) throw new Error(JSON.stringify([problems, made?.problems]));
  return { text: written, plan, facts: made.value, told: made.problems.map(({ code }) => code) };
}

/** The dog's plan with other care, as flow YAML, and nothing booked. */
const dogWith = (...care: string[]): string =>
  text("dog-cheek-abscess/plan.yaml")
    .replace(/^care:\n( .*\n)+/m, `care:\n${care.map((one) => `  - ${one}\n`).join("")}`)
    .replace(/^booked:\n( .*\n)+/m, "")
    .replace(/^collar: .*\n/m, "");

const wound = (site: string, ...course: string[]): string =>
  `{ topic: open-wound-clinic-bandage, site: ${site}, bandage: ${site.includes("paw") ? "soft padded" : "tie-over"}, course: [${course.map((line) => `"${line}"`).join(", ")}] }`;

const daily = "change every day for 5 days, first tomorrow";
const closing = { at: "2026-03-05 09:30", visit: ["closure"], decided: "close", charged: "290.00" };
const stitches = { ...closing, course: ["sutures out day 10-14"] };

function revised(before: Paper, entered: Record<string, unknown>) {
  const entry = mergeVisit(null, entered);
  if (!entry.value) throw new Error(JSON.stringify(entry.problems));
  const { value: edits, problems } = revise(before.plan, before.facts, entry.value, house);
  const asked = problems.map(({ code, severity }) => `${severity} ${code}`);
  return { asked, next: (earlier = [before.plan]) => read(editPlan(before.text, edits ?? []), earlier) };
}

const careOf = ({ plan }: Paper) => plan.care.map(({ topic, bandage, course }) => [topic, bandage, ...course]);
const open = "open-wound-clinic-bandage";

function pageOf({ facts }: Paper): string {
  const paper = compose(facts, house, { language: "en" }).value;
  return [...blocksIn(paper ?? { sections: [] })].flatMap(linesOf).map(wordsOf).join("\n").replaceAll("\u00a0", " ");
}

describe("a wound that was closed", () => {
  const before = read(dogWith(wound("left cheek", daily, "maybe closure day 3-14")));

  it("is told of as closed, and its bandage no more", () => {
    const { asked, next } = revised(before, stitches);
    expect(asked).toEqual([]);
    expect(careOf(next())).toEqual([["delayed-closure", undefined, "sutures out day 10-14"]]);
    const [old, now] = [pageOf(before), pageOf(next())];
    for (const said of [
      "We left the wound open on purpose",
      "We change the bandage at the clinic",
      "The bandage is wet",
    ]) {
      expect(old).toContain(said);
      expect(now).not.toContain(said);
    }
    expect(now).toContain("Now we have closed it.");
    expect(now).toContain("New care: Wound closed after some days open, left cheek.");
    expect(now).not.toContain("The hole closes");
    expect(next().told).not.toContain("wound-told-open");
  });

  it("has its own days of what is normal, and they go on", () => {
    const closed = revised(before, stitches).next();
    expect(pageOf(before)).toContain("may be quiet and sleep more for 2 days");
    expect(pageOf(closed)).toContain("bruising along the stitches for 3 days");
    const entry = { at: "2026-03-07 09:30", visit: ["recheck"], decided: "continue", charged: "20.00" };
    const later = pageOf(revised(closed, entry).next([before.plan, closed.plan]));
    expect(later).toContain("bruising along the stitches for 1 day.");
    expect(later).not.toContain("may chew slowly");
  });

  it("has its reason in the words that were entered", () => {
    const reason = { en: "We closed the wound today.", es: "Hoy cerramos la herida." };
    expect(revised(before, { ...stitches, reason }).next().plan.reason).toEqual(reason);
    expect(revised(before, { ...stitches, reason: reason.en }).next().plan.reason).toBe(reason.en);
    expect(revised(before, stitches).next().plan.reason).toEqual(before.plan.reason);
  });

  it("needs a visit for its stitches, in the course or booked", () => {
    expect(revised(before, closing).asked).toEqual(["ask revise-closed-no-visit"]);
    expect(revised(before, { ...closing, booked: ["2026-03-16 09:30"] }).asked).toEqual([]);
  });

  it("was decided to be closed", () => {
    expect(revised(before, { ...stitches, decided: "continue" }).asked).toContain("ask revise-closed-open");
  });

  it("is asked about where a plan made by hand still tells of an open one", () => {
    const done = (decided: string) =>
      `${dogWith(wound("left cheek", daily))}done:\n  - { at: 2026-03-01 09:30, visit: [closure], decided: ${decided} }\n`;
    expect(read(done("close")).told).toContain("wound-told-open");
    expect(read(done("continue")).told).not.toContain("wound-told-open");
    expect(read(done("close").replace(open, "delayed-closure")).told).not.toContain("wound-told-open");
  });
});

describe("of two wounds", () => {
  const paw = wound("right hind paw", daily, "change every 2 days until day 14");

  test.each([
    ["first", [wound("left cheek", daily, "maybe closure day 3-14"), paw], 0],
    ["second", [paw, wound("left cheek", daily, "maybe closure day 3-14")], 1],
  ])("the one that plans a closure is closed, and the other goes on: the %s", (_, care, closed) => {
    const { asked, next } = revised(read(dogWith(...care)), stitches);
    expect(asked).toEqual([]);
    const now = careOf(next());
    expect(now[closed]).toEqual(["delayed-closure", undefined, "sutures out day 10-14"]);
    expect(now[1 - closed]?.slice(0, 2)).toEqual([open, "soft padded"]);
    expect(now[1 - closed]?.join()).toContain("change every 2 days, until day 11");
    expect(next().told).not.toContain("wound-told-open");
  });

  test("of two that plan one, the one that is due", () => {
    const both = [
      wound("left cheek", daily, "maybe closure day 10-14"),
      wound("right cheek", daily, "maybe closure day 3-5"),
    ];
    expect(careOf(revised(read(dogWith(...both)), stitches).next()).map(([topic]) => topic)).toEqual([
      open,
      "delayed-closure",
    ]);
  });

  test.each([
    [
      "both due",
      [wound("left cheek", daily, "maybe closure day 3"), wound("right cheek", daily, "maybe closure day 2")],
    ],
    ["neither plans one", [wound("left cheek", daily), wound("right cheek", daily)]],
  ])("nobody can tell which: %s", (_, care) => {
    expect(revised(read(dogWith(...care)), stitches).asked).toContain("stop revise-which-closed");
  });

  test("two lines of care for one place are one wound: the bandage changes of both end", () => {
    const bite = `{ topic: bite-wound, site: left cheek, course: ["change every day for 9 days, first tomorrow", "recheck day 9"] }`;
    const after = revised(read(dogWith(wound("left cheek", daily, "maybe closure day 3-14"), bite)), stitches).next();
    expect(careOf(after)).toEqual([
      ["delayed-closure", undefined, "sutures out day 10-14"],
      ["bite-wound", undefined, "recheck day 6"],
    ]);
  });
});

describe("what came out is told of no more", () => {
  const drain = `{ topic: surgical-drain, site: left front paw, course: ["drain out day 3", "recheck day 9"] }`;
  const out = { at: "2026-03-05 09:30", visit: ["drain out"], decided: "drain out", charged: "20.00" };

  it("is asked about, until there is other care in its place", () => {
    const next = revised(read(dogWith(drain)), out).next();
    expect(next.told).toContain("care-told-on");
    expect(read(next.text.replace("surgical-drain", "sutured-wound")).told).not.toContain("care-told-on");
  });

  it("is no matter of other visits, nor of another wound's bandage", () => {
    const bandaged = `{ topic: bite-wound, site: left front paw, bandage: soft padded, course: ["recheck day 9"] }`;
    const splint = `{ topic: splint-or-cast, site: right hind leg, course: ["splint off day 3"] }`;
    const next = revised(read(dogWith(splint, bandaged)), {
      ...out,
      visit: ["splint off"],
      decided: "continue",
    }).next();
    expect(next.plan.care[1]?.bandage).toBe("soft padded");
    expect(next.told).toContain("care-told-on");
    expect(next.told).not.toContain("bandage-told-on");
    const seen = { ...out, visit: ["recheck"], decided: "continue" };
    expect(revised(read(dogWith(drain.replace("day 3", "day 5"))), seen).next().told).not.toContain("care-told-on");
  });
});

describe("a bandage that came off for good", () => {
  const off = { at: "2026-03-05 09:30", visit: ["bandage off"], decided: "continue", charged: "20.00" };
  const bite = (bandage: string) =>
    `{ topic: bite-wound, site: left front paw, bandage: ${bandage}, course: ["bandage off day 3", "recheck day 9"] }`;

  it("is told of no more", () => {
    const before = read(dogWith(bite("soft padded")));
    const after = revised(before, off).next();
    expect(careOf(after)).toEqual([["bite-wound", undefined, "recheck day 6"]]);
    expect(pageOf(before)).toContain("The bandage is wet");
    expect(pageOf(after)).not.toContain("The bandage is wet");
    expect(after.facts.changes?.care.map(({ topic }) => topic)).toEqual(["bite-wound"]);
  });

  it("is asked about where the care is none without it, or several are bandaged", () => {
    const before = read(dogWith(wound("left cheek", daily, "bandage off day 3", "recheck day 9")));
    const after = revised(before, off).next();
    expect(careOf(after)[0]?.slice(0, 2)).toEqual([open, "tie-over"]);
    expect(after.told).toContain("bandage-told-on");
    const two = read(dogWith(bite("soft padded"), bite("soft padded").replace("left", "right")));
    expect(
      revised(two, off)
        .next()
        .plan.care.map(({ bandage }) => bandage),
    ).toEqual(["soft padded", "soft padded"]);
  });

  it("is on again after a change, and was changed where both are said", () => {
    const later = (...visits: string[]) => {
      const done = visits.map((visit, i) => `  - { at: 2026-02-2${i} 09:30, visit: [${visit}], decided: continue }\n`);
      return read(`${dogWith(wound("left cheek", daily))}done:\n${done.join("")}`).told;
    };
    expect(later("bandage off")).toContain("bandage-told-on");
    expect(later("bandage off", "recheck")).toContain("bandage-told-on");
    expect(later("bandage off", "change")).not.toContain("bandage-told-on");
    expect(later("bandage off, change")).not.toContain("bandage-told-on");
    expect(later("change")).not.toContain("bandage-told-on");
  });
});
