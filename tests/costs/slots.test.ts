import { describe, expect, it } from "vitest";
import { decisionOf, slotsOf } from "../../src/compute/costs/slots.js";
import type { Course, Visit } from "../../src/compute/facts.js";
import { counts, noCourse, visit } from "./help.js";

type Item = Parameters<typeof slotsOf>[0];
const item = (price: Partial<Item["price"]>, when: Item["when"] = null) =>
  ({ price: { visit: null, per: "visit", ...price }, times: 1, when, included: 0 }) as Item;
const counted = (course: Partial<Course>) => ({
  discharged: "2026-03-02T16:30",
  course: { ...noCourse, ...course },
  medicines: [],
  collar: null,
});
/** "03-04 change-2 low likely high (closure)": the day, the visit, the courses it is in, what it waits for. */
const told = (asked: Item, course: Partial<Course>) =>
  slotsOf(asked, counted(course)).map(({ day, visit, decision, in: ends }) =>
    [
      day.slice(5),
      visit?.id ?? "-",
      ...(["low", "likely", "high"] as const).filter((end) => ends[end]),
      ...(decision === null ? [] : [`(${decision})`]),
    ].join(" "),
  );

const ends = { earliest: "2026-03-05", latest: "2026-03-12" };
const changes = [
  visit("change-3", "bandage-change", ["2026-03-06", "2026-03-06", "2026-03-07"], null, "possible"),
  visit("change-2", "bandage-change", "2026-03-04"),
  visit("change-1", "bandage-change", "2026-03-03T09:00"),
];
const ofChange = { visit: "bandage-change" };
const purposes = (kind: string, ...of: [number, number, number]) => [{ kind, counts: counts(...of) }];

describe("an item charged at each visit of its kind", () => {
  it("stands on the day of each, the booked and expected before the possible, each in the courses that have so many", () => {
    expect(told(item(ofChange), { visits: changes, purposes: purposes("bandage-change", 1, 2, 3), ends })).toEqual([
      "03-03 change-1 low likely high",
      "03-04 change-2 likely high",
      "03-06 change-3 high",
    ]);
  });

  it("a possible visit that is earlier than a sure one comes after it all the same", () => {
    const visits = [
      visit("a", "bandage-change", ["2026-03-03", "2026-03-03", "2026-03-03"], null, "possible"),
      visit("b", "bandage-change", "2026-03-05"),
    ];
    expect(told(item(ofChange), { visits, purposes: purposes("bandage-change", 1, 1, 2), ends })).toEqual([
      "03-05 b low likely high",
      "03-03 a high",
    ]);
  });

  it("what the course counts and has not placed stands on its last day, or today where it has none", () => {
    const two = purposes("bandage-change", 1, 2, 2);
    const one = changes.slice(2);
    expect(told(item(ofChange), { visits: one, purposes: two, ends })).toEqual([
      "03-03 change-1 low likely high",
      "03-12 - likely high",
    ]);
    expect(told(item(ofChange), { visits: [], purposes: two, ends: null })).toEqual([
      "03-02 - low likely high",
      "03-02 - likely high",
    ]);
  });

  it("of the visits that may come, those that wait for a decision are in the longest course before the rest", () => {
    const visits = [
      visit("late", "recheck", "2026-03-11", "closure"),
      visit("soon", "recheck", "2026-03-09", "closure"),
      visit("maybe", "recheck", ["2026-03-04", "2026-03-04", "2026-03-04"], null, "possible"),
      visit("sure", "recheck", "2026-03-05"),
    ];
    expect(told(item({ visit: "recheck" }), { visits, purposes: purposes("recheck", 1, 1, 3), ends })).toEqual([
      "03-05 sure low likely high",
      "03-09 soon high (closure)",
      "03-11 late high (closure)",
      "03-04 maybe",
    ]);
  });

  it("a visit for two things is one of each kind, and of no third", () => {
    const both = {
      ...visit("both", "recheck", "2026-03-05"),
      purposes: [{ kind: "recheck" }, { kind: "x-ray" }],
    } as Visit;
    const course = { visits: [both], purposes: [...purposes("recheck", 1, 1, 1), ...purposes("x-ray", 1, 1, 1)], ends };
    expect(told(item({ visit: "x-ray" }), course)).toEqual(["03-05 both low likely high"]);
    expect(told(item({ visit: "recheck" }), course)).toEqual(["03-05 both low likely high"]);
    expect(told(item(ofChange), course)).toEqual([]);
  });

  it("with no kind named, at every trip", () => {
    expect(told(item({}), { visits: changes, trips: counts(1, 2, 3), ends })).toEqual([
      "03-03 change-1 low likely high",
      "03-04 change-2 likely high",
      "03-06 change-3 high",
    ]);
  });
});

describe("what is only a maybe is in the longest course alone", () => {
  const course = { visits: changes, purposes: purposes("bandage-change", 1, 2, 2), ends };

  it("if needed: once at least, each time that the longest course has, and never in the others", () => {
    expect(told(item(ofChange, "needed"), course)).toEqual([
      "03-03 change-1 high",
      "03-04 change-2 high",
      "03-06 change-3",
    ]);
    expect(told(item(ofChange, "needed"), { visits: [], purposes: purposes("bandage-change", 0, 0, 0) })).toEqual([
      "03-02 - high",
    ]);
    const none = { visits: [changes[0] as Visit], purposes: purposes("bandage-change", 0, 0, 0), ends };
    expect(told(item(ofChange, "needed"), none)).toEqual(["03-06 change-3 high"]);
  });

  it("if done: waits for the visit its row names", () => {
    expect(told(item({ visit: "closure" }, "done"), course)).toEqual(["03-02 - high (closure)"]);
    expect(told(item({ visit: null, per: "once" }, "done"), course)).toEqual(["03-03 change-1 high"]);
  });

  it("an item waits for a decision only where every visit of its kind waits for the same", () => {
    const waits = (...on: (string | null)[]) =>
      decisionOf(item({ visit: "recheck" }), {
        ...noCourse,
        visits: on.map((decision, i) => visit(`r${i}`, "recheck", `2026-03-0${i + 3}`, decision)),
      });
    expect([waits("closure", "closure"), waits("closure", "x-ray"), waits("closure", null), waits(null)]).toEqual([
      "closure",
      null,
      null,
      null,
    ]);
    expect(decisionOf(item({ visit: null }, "done"), noCourse)).toBeNull();
    const waiting = { ...noCourse, visits: [visit("shut", "closure", "2026-03-09", "closure")] };
    expect(decisionOf(item({ visit: null, per: "once" }), waiting)).toBeNull();
    expect(decisionOf(item({ visit: "closure" }, "done"), noCourse)).toBe("closure");
    expect(decisionOf(item({ visit: "closure" }, "needed"), noCourse)).toBeNull();
  });

  it("charged without an ending, what waits is not in the shortest nor in the likely course", () => {
    const visits = [visit("shut", "closure", "2026-03-09", "closure")];
    expect(told(item({ visit: "closure", per: "once" }), { visits, ends })).toEqual(["03-09 shut high (closure)"]);
    expect(told(item({ visit: "closure" }), { visits, purposes: purposes("closure", 0, 0, 1), ends })).toEqual([
      "03-09 shut high (closure)",
    ]);
  });
});

describe("an item charged once, for the medicine, or for each day", () => {
  it("once is today, or at the first visit of the kind it names, whatever order they are written in", () => {
    expect(told(item({ per: "once" }), { visits: changes })).toEqual(["03-02 - low likely high"]);
    expect(told(item({ per: "once", ...ofChange }), { visits: changes })).toEqual(["03-03 change-1 low likely high"]);
    expect(told(item({ per: "once", visit: "x-ray" }), { visits: changes })).toEqual(["03-02 - low likely high"]);
  });

  it("a medicine is charged on the day it goes home", () =>
    expect(told(item({ per: "unit" }), { visits: changes, ends })).toEqual(["03-02 - low likely high"]));

  it("each day is a day after today, up to the end of the shortest, the likely and the longest course", () => {
    const visits = [visit("a", "recheck", ["2026-03-04", "2026-03-04", "2026-03-07"])];
    const until = { earliest: "2026-03-03", latest: "2026-03-06" };
    expect(told(item({ per: "day" }), { visits, ends: until })).toEqual([
      "03-03 - low likely high",
      "03-04 - likely high",
      "03-05 - high",
      "03-06 - high",
    ]);
    expect(told(item({ per: "day" }), { visits: [], ends: null })).toEqual([]);
    const maybe = [visit("b", "recheck", ["2026-03-06", "2026-03-06", "2026-03-06"], null, "possible")];
    expect(told(item({ per: "day" }), { visits: maybe, ends: until })).toEqual([
      "03-03 - low likely high",
      "03-04 - high",
      "03-05 - high",
      "03-06 - high",
    ]);
  });
});
