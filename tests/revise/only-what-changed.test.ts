import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { beforeAll, describe, expect, it } from "vitest";
import { blocksIn, linesOf, wordsOf } from "#handout/walk.js";
import { compose, compute, editPlan, type Facts, mergeVisit, type Plan, readPlan, revise } from "../../src/index.js";
import { house } from "../examples/examples.js";

const home = fileURLToPath(new URL("../../examples/", import.meta.url));
const source = (file: string, text = readFileSync(home + file, "utf8")) => ({
  file,
  bytes: new TextEncoder().encode(text),
});
const others = { clinic: source("clinic.yaml"), prices: source("prices.yaml") };

let before: { plan: Plan; facts: Facts; bytes: Uint8Array };
beforeAll(() => {
  before = read(source("dog-cheek-abscess/plan.yaml"), []);
});

function read(plan: ReturnType<typeof source>, earlier: Plan[]) {
  const { value, problems } = readPlan({ plan, ...others }, { today: "2026-03-02" });
  const facts = value && compute(value, house, earlier).value;
  if (!value || !facts) throw new Error(JSON.stringify([problems, value && compute(value, house, earlier).problems]));
  return { plan: value, facts, bytes: plan.bytes };
}

type Entered = Record<string, unknown>;
/** The visit that was planned, at its time and its price: by itself it makes nothing new. */
const asPlanned: Entered = {
  at: "2026-03-03 09:30",
  visit: ["change"],
  decided: "continue",
  charged: "48.00",
  paid: "48.00",
};
const firstDay = { "2026-03-02": "401.06" };

/** The paper after a visit that was entered. */
function paperAfter(entered: Entered) {
  const entry = mergeVisit(null, { ...asPlanned, "charged on": firstDay, ...entered });
  if (!entry.value) throw new Error(JSON.stringify(entry.problems));
  const { value: edits, problems } = revise(before.plan, before.facts, entry.value, house);
  if (!edits) throw new Error(JSON.stringify(problems));
  const sha256 = createHash("sha256").update(before.bytes).digest("hex");
  const revises = { path: ["revises"], value: { plan: "plan.yaml", sha256 } };
  const text = editPlan(new TextDecoder().decode(before.bytes), [...edits, revises]);
  return read(source("dog-cheek-abscess/plan.yaml", text), [before.plan]).facts;
}

const gabapentin = {
  ...{ name: "gabapentin", capsule: "100 mg", give: "1 capsule", every: "12 h", for: "3 days", "last given": "09:00" },
};

/** One change each, as it is entered, and all that the paper may tell of it. The last one asked for of a field goes first. */
const changes: Record<string, { entered: Entered; told: string[] }> = {
  stop: { entered: { stop: ["carprofen"] }, told: ["stopped carprofen"] },
  start: { entered: { medicines: [gabapentin] }, told: ["started gabapentin"] },
  collar: { entered: { "collar until": "2026-03-25" }, told: ["collar"] },
  weight: { entered: { weight: "24.9 kg" }, told: [] },
  seen: { entered: { seen: { discharge: "little", tissue: ["pink"] }, did: ["flushed"] }, told: [] },
  count: { entered: { left: { "amoxicillin-clavulanate": "13 tablets" } }, told: [] },
  money: { entered: { charged: "60.00" }, told: ["cost"] },
};

const toldBy = ({ changes }: Facts): string[] => [
  ...Object.entries(changes?.visits ?? {}).flatMap(([kind, list]) => list.map(() => `${kind} visit`)),
  ...(changes?.care.map(({ topic }) => `care ${topic}`) ?? []),
  ...Object.entries(changes?.medicines ?? {}).flatMap(([kind, list]) => list.map(({ id }) => `${kind} ${id}`)),
  ...(changes?.collar ? ["collar"] : []),
  ...(changes?.cost ? ["cost"] : []),
];

/** What stands under "What changed", one line an item. */
function itemsOf(facts: Facts): string[] {
  const paper = compose(facts, house, { language: "en" }).value;
  const section = paper?.sections.find(({ id }) => id === "changed");
  const blocks = section ? [...blocksIn({ sections: [section] })] : [];
  return blocks.filter(({ kind }) => kind === "list").flatMap((block) => linesOf(block).map(wordsOf));
}

it("a visit that went as planned makes nothing new", () => {
  const facts = paperAfter({});
  expect([toldBy(facts), facts.changes?.any]).toEqual([[], false]);
  expect(itemsOf(facts)).toHaveLength(1);
});

const names = Object.keys(changes);
/** None, each, each two, and all together. */
const subsets = [
  [],
  ...names.map((name) => [name]),
  ...names.flatMap((one, i) => names.slice(i + 1).map((other) => [one, other])),
  names,
];

it("whatever changes at once, the paper tells that and nothing else", () => {
  for (const chosen of subsets) {
    const facts = paperAfter(Object.assign({}, ...chosen.map((name) => changes[name]?.entered)));
    const told = chosen.flatMap((name) => changes[name]?.told ?? []);
    expect(toldBy(facts).toSorted(), chosen.join(" ")).toEqual(told.toSorted());
    expect(itemsOf(facts).length, chosen.join(" ")).toBe(Math.max(1, told.length));
  }
});

describe("one change of the visits alone", () => {
  it.each<[string, Entered, RegExp]>([
    ["a longer gap", { decided: "stretch", every: "3" }, /^(moved|cancelled|added) visit|cost/],
    ["no more visits", { decided: "stop", course: [] }, /^cancelled visit|collar|cost/],
  ])("%s tells of visits, and of what hangs on them", (_, entered, may) => {
    const unbooked = editPlan(new TextDecoder().decode(before.bytes), [{ path: ["booked"] }]);
    const was = before;
    before = read(source("dog-cheek-abscess/plan.yaml", unbooked), []);
    const told = toldBy(paperAfter(entered));
    before = was;
    expect(told.length).toBeGreaterThan(0);
    for (const one of told) expect(one).toMatch(may);
  });

  it("a time on one of the days that were told is a visit booked, and on another a visit moved", () => {
    const unbooked = editPlan(new TextDecoder().decode(before.bytes), [{ path: ["booked"] }]);
    const was = before;
    before = read(source("dog-cheek-abscess/plan.yaml", unbooked), []);
    const { visits } = before.facts.course;
    const next = visits.find(({ earliest, latest }) => earliest > "2026-03-04" && earliest < latest) ?? expect.fail();
    const told = toldBy(paperAfter({ booked: ["2026-03-04 09:30", "2026-03-05 09:30", `${next.earliest} 09:30`] }));
    before = was;
    expect(told).toContain("booked visit");
    expect(told).not.toContain("moved visit");
  });
});
