import { describe, expect, test } from "vitest";
import type { Course, Medicine } from "#compute/facts.js";
import { counts, estimate, noCourse, price, visit } from "./help.js";

/** Five to nine bandage changes, and perhaps a closure. */
const course: Course = {
  ...noCourse,
  visits: [
    visit("change-1", "bandage-change", "2026-03-03T09:30"),
    visit("change-2", "bandage-change", "2026-03-12"),
    visit("closure-1", "closure", "2026-03-09", "closure"),
    visit("sutures-1", "suture-removal", "2026-03-21", "closure"),
  ],
  trips: counts(5, 7, 11),
  purposes: [
    { kind: "bandage-change", counts: counts(5, 7, 9) },
    { kind: "closure", counts: counts(0, 0, 1) },
    { kind: "suture-removal", counts: counts(0, 0, 1) },
  ],
  ends: { earliest: "2026-03-10", latest: "2026-03-21" },
};
const amoxicillin = {
  id: "amoxicillin",
  name: "Amoxicillin",
  strength: { value: "62.5", unit: "mg/mL" },
  dispense: { value: "17.5", unit: "mL" },
} as Medicine;

const prices = [
  { item: "opened and flushed", price: price("310.00"), name: { en: "Opened", es: "Abierto" } },
  { item: "bandage change", price: price("48.00"), per: "visit" as const, visit: "bandage change" },
  { item: "greeting", price: price("1.00"), per: "visit" as const },
  { item: "sedation", price: price("65.00", "90.01") },
  { item: "closure", price: price("240.00", "320.00"), per: "visit" as const, visit: "closure" },
  { item: "sutures out", price: price("20.00"), per: "visit" as const, visit: "suture-removal" },
  { item: "day care", price: price("10.00"), per: "day" as const },
  { item: "amoxicillin 62.5 mg/mL", price: price("0.33"), per: "unit" as const },
];

const line = (item: string, with_: Partial<Parameters<typeof estimate>[0]> = {}) => {
  const [only] = estimate({ items: [item], prices, course, medicines: [amoxicillin], ...with_ }).lines;
  if (!only) throw new Error("no line");
  return only;
};

describe("a line", () => {
  test("charged once", () => {
    expect(line("opened and flushed")).toEqual({
      item: "opened and flushed",
      name: { en: "Opened", es: "Abierto" },
      houseName: null,
      quantity: counts(1, 1, 1),
      of: null,
      included: 0,
      unit: { low: 31000, likely: 31000, high: 31000 },
      total: { low: 31000, likely: 31000, high: 31000 },
      when: null,
      dependsOn: null,
      from: { file: "estimate/items/0", line: 1, column: 1, length: 1 },
    });
  });

  test("by the visit of a kind", () => {
    expect(line("bandage change")).toMatchObject({
      quantity: counts(5, 7, 9),
      total: { low: 24000, likely: 33600, high: 43200 },
      dependsOn: null,
    });
  });

  test("by any visit", () => {
    expect(line("greeting").quantity).toEqual(counts(5, 7, 11));
  });

  test("by the day: to the end of the course, likely to the last visit that is expected", () => {
    expect(line("day care").quantity).toEqual(counts(8, 10, 19));
    expect(line("day care", { course: noCourse }).quantity).toEqual(counts(0, 0, 0));
  });

  test("by the unit that is dispensed, in exact decimals", () => {
    expect(line("amoxicillin 62.5 mg/mL")).toMatchObject({
      quantity: counts(17.5, 17.5, 17.5),
      total: { low: 578, likely: 578, high: 578 },
    });
  });

  test("of several medicines of that name, the units together", () => {
    const two = [amoxicillin, { ...amoxicillin, dispense: { value: "0.1", unit: "mL" } }];
    expect(line("amoxicillin 62.5 mg/mL", { medicines: two }).quantity.most).toBe(17.6);
  });

  test("with a range of prices: the middle is likely, half a cent up", () => {
    expect(line("sedation").total).toEqual({ low: 6500, likely: 7751, high: 9001 });
  });

  test.each(["Bandage  change x 2", "bandage change x2", "bandage change × 2"])("%s", (item) => {
    expect(line(item).quantity).toEqual(counts(10, 14, 18));
  });

  test.each(["sedation x 2 if needed", "sedation if needed x 2"])("%s counts in high only", (item) => {
    expect(line(item)).toMatchObject({
      quantity: counts(0, 0, 2),
      total: { low: 0, likely: 0, high: 18002 },
      when: "needed",
      dependsOn: null,
    });
  });

  test("if done waits for the decision its price names", () => {
    expect(line("closure if done")).toMatchObject({
      total: { low: 0, likely: 0, high: 32000 },
      when: "done",
      dependsOn: "closure",
    });
  });

  test("if done counts once where the course has no such visit", () => {
    expect(line("closure if done", { course: noCourse }).quantity).toEqual(counts(0, 0, 1));
  });

  test("of a visit that waits for a decision waits with it", () => {
    expect(line("sutures out")).toMatchObject({ quantity: counts(0, 0, 1), when: null, dependsOn: "closure" });
  });

  test("whose own name ends like a number of times is meant as it stands", () => {
    expect(line("gauze x 2", { prices: [{ item: "gauze x 2", price: price("3.00") }] }).total.high).toBe(300);
  });

  test("without a name of its own is called what the plan calls it, in the staff's language", () => {
    expect(line("sedation").name).toEqual({ en: "sedation" });
  });
});

describe("what was paid and what the clinic says", () => {
  const one = { items: ["one"], prices: [{ item: "one", price: price("100.00", "200.00") }] };

  test("is taken off, never below nothing", () => {
    expect(estimate({ ...one, paid: "120.00" })).toMatchObject({
      paid: 12000,
      balance: { low: 0, likely: 3000, high: 8000 },
      credit: 2000,
    });
  });

  test("a clinic that says nothing promises nothing", () => {
    expect(estimate(one)).toMatchObject({ validUntil: null, ringAbove: null, terms: null, excluded: [], credit: 0 });
  });

  test("a share or an amount over the high end before it rings", () => {
    const ring = (over: { percent: string } | { amount: string }) =>
      estimate({ ...one, terms: { "ring before passing": over } }).ringAbove;
    expect(ring({ percent: "10" })).toBe(22000);
    expect(ring({ percent: "0" })).toBe(20000);
    expect(ring({ amount: "50.00" })).toBe(25000);
  });

  test.each([
    ["14", "day", "2026-03-16"],
    ["2", "week", "2026-03-16"],
    ["1.5", "week", "2026-03-12"],
    ["30", "day", "2026-04-01"],
  ] as const)("valid for %s %s from the day of discharge: until %s", (value, unit, day) => {
    expect(estimate({ ...one, terms: { valid: { value, unit } } }).validUntil).toBe(day);
  });

  test("its words, in the language of the staff or in each", () => {
    const terms = { terms: "Pay on the day.", "not included": [{ en: "X-rays", es: "Radiografías" }, "Tests"] };
    expect(estimate({ ...one, terms })).toMatchObject({
      terms: { en: "Pay on the day." },
      excluded: [{ en: "X-rays", es: "Radiografías" }, { en: "Tests" }],
    });
  });
});

test("the collar the animal goes home with has the house's own name, and no other has", () => {
  const prices = ["Soft cone collar", "cone collar"].map((item) => ({ item, price: price("18.50") }));
  const { lines } = estimate({ items: ["soft cone collar", "cone collar"], prices, collar: "soft cone" });
  expect(lines.map(({ houseName }) => houseName)).toEqual([{ of: "collar", name: "soft-cone" }, null]);
});

test("a visit and a medicine have the house's own name, and what only goes with a visit has none", () => {
  const changes = { course: { purposes: [{ kind: "bandage-change", counts: counts(1, 1, 1) }] } };
  const at = { per: "visit" as const, visit: "bandage-change" };
  const carprofen = { id: "carprofen-2", name: "Carprofen", called: "carprofen", strength: null };
  const dispense = { value: "4", unit: "tablet" };
  const { lines } = estimate({
    items: ["Bandage change", "sedation", "carprofen 100 mg", "carprofen"],
    prices: [
      { item: "Bandage change", price: price("48.00"), ...at },
      { item: "sedation", price: price("65.00"), ...at },
      { item: "carprofen 100 mg", price: price("2.00"), per: "unit" as const },
      { item: "carprofen", price: price("2.00") },
    ],
    medicines: [{ ...carprofen, dispense }],
    ...changes,
  });
  expect(lines.map(({ houseName, of }) => [houseName, of])).toEqual([
    [{ of: "visit", name: "bandage-change" }, null],
    [null, null],
    [{ of: "medicine", name: "carprofen" }, "tablet"],
    [null, null],
  ]);
});

test("the price of one goes from the cheapest visit to the dearest, and stands where nothing is charged", () => {
  const weekend = { when: "weekend" as const, more: { amount: "10.00" } };
  const at = { per: "visit" as const, visit: "recheck", "by time": [weekend] };
  const prices = [{ item: "check", price: price("20.00"), ...at }];
  const unitOf = (days: string[]) => {
    const visits = days.map((day, i) => visit(`recheck-${i}`, "recheck", day));
    const purposes = [{ kind: "recheck", counts: counts(days.length, days.length, days.length) }];
    return estimate({ items: ["check"], prices, course: { visits, purposes } }).lines[0]?.unit;
  };
  expect(unitOf(["2026-03-10", "2026-03-14"])).toEqual({ low: 2000, likely: 2000, high: 3000 });
  expect(unitOf(["2026-03-14", "2026-03-17"])).toEqual({ low: 2000, likely: 3000, high: 3000 });
  expect(unitOf([])).toEqual({ low: 2000, likely: 2000, high: 2000 });
});
