import { describe, expect, test } from "vitest";
import type { Course } from "#compute/facts.js";
import { counts, estimate, price, span, visit } from "./help.js";

/** Two bandage changes for sure, a third perhaps; perhaps a closure, and then its sutures come out. */
const course: Partial<Course> = {
  visits: [
    visit("change-1", "change", "2026-03-03T09:30"),
    visit("change-2", "change", ["2026-03-05", "2026-03-06", "2026-03-07"]),
    visit("change-3", "change", "2026-03-09", null, "possible"),
    visit("closure-1", "closure", "2026-03-10", "closure"),
    visit("sutures-1", "suture-removal", "2026-03-21", "closure"),
  ],
  purposes: [
    { kind: "change", counts: counts(2, 2, 3) },
    { kind: "closure", counts: counts(0, 0, 1) },
    { kind: "suture-removal", counts: counts(0, 0, 1) },
  ],
  ends: { earliest: "2026-03-06", latest: "2026-03-21" },
};
const given = {
  course,
  items: ["opened", "change", "sedation x 3 if needed", "closure if done", "sutures out"],
  taxes: [{ name: "tax", rate: "10", inclusive: "no" as const }],
  prices: [
    { item: "opened", price: price("300.00"), tax: "tax" },
    { item: "change", price: price("50.00"), per: "visit" as const, visit: "change" },
    { item: "sedation", price: price("60.00", "80.00") },
    { item: "closure", price: price("240.00", "320.00"), per: "visit" as const, visit: "closure" },
    { item: "sutures out", price: price("20.00"), per: "visit" as const, visit: "suture-removal" },
  ],
};

describe("the parts of a whole estimate", () => {
  test("today", () => {
    expect(estimate(given).today).toEqual(span(33000));
  });

  test("each visit, if it happens; what is only if needed counts in high, at the first", () => {
    expect(estimate(given).visits).toEqual([
      {
        visit: "change-1",
        day: "2026-03-03",
        certainty: "booked",
        dependsOn: null,
        amount: span(5000, 5000, 29000),
        own: span(5000),
      },
      {
        visit: "change-2",
        day: "2026-03-06",
        certainty: "expected",
        dependsOn: null,
        amount: span(5000),
        own: span(5000),
      },
      {
        visit: "change-3",
        day: "2026-03-09",
        certainty: "possible",
        dependsOn: null,
        amount: span(5000),
        own: span(5000),
      },
      {
        visit: "closure-1",
        day: "2026-03-10",
        certainty: "possible",
        dependsOn: "closure",
        amount: span(24000, 28000, 32000),
        own: span(24000, 28000, 32000),
      },
      {
        visit: "sutures-1",
        day: "2026-03-21",
        certainty: "possible",
        dependsOn: "closure",
        amount: span(2000),
        own: span(2000),
      },
    ]);
  });

  test("by date, to the end of the course", () => {
    expect(estimate(given).byDate).toEqual([
      { day: "2026-03-02", total: span(33000) },
      { day: "2026-03-03", total: span(38000, 38000, 62000) },
      { day: "2026-03-06", total: span(43000, 43000, 67000) },
      { day: "2026-03-09", total: span(43000, 43000, 72000) },
      { day: "2026-03-10", total: span(43000, 43000, 104000) },
      { day: "2026-03-21", total: span(43000, 43000, 106000) },
    ]);
  });

  test("with and without each decision, and all that is only if needed", () => {
    expect(estimate(given).branches).toEqual([
      { decision: null, without: span(43000, 43000, 82000), with: span(61000, 64000, 106000) },
      { decision: "closure", without: span(43000, 43000, 72000), with: span(69000, 73000, 106000) },
    ]);
  });

  test("of what comes at each visit after a decision, the first is sure with it, and what is only if needed is never", () => {
    const perCheck = { per: "visit" as const, visit: "recheck" };
    const weekend = { when: "weekend" as const, more: { amount: "10.00" } };
    const { branches } = estimate({
      items: ["check", "sedation if needed"],
      prices: [
        { item: "check", price: price("20.00"), ...perCheck, "by time": [weekend] },
        { item: "sedation", price: price("50.00"), ...perCheck },
      ],
      course: {
        visits: ["2026-03-10", "2026-03-14"].map((day, i) => visit(`recheck-${i + 1}`, "recheck", day, "closure")),
        purposes: [{ kind: "recheck", counts: counts(0, 0, 2) }],
      },
    });
    expect(branches).toEqual([{ decision: "closure", without: span(0), with: span(2000, 5000, 15000) }]);
  });

  test("a course without a maybe has no branch", () => {
    expect(estimate({ ...given, items: ["opened", "change"] }).branches).toEqual([]);
  });

  test("by the day: each day has its bill", () => {
    const { byDate } = estimate({
      items: ["stay"],
      prices: [{ item: "stay", price: price("10.00"), per: "day" as const }],
      course: { visits: [], ends: { earliest: "2026-03-03", latest: "2026-03-04" } },
    });
    expect(byDate).toEqual([
      { day: "2026-03-03", total: span(1000) },
      { day: "2026-03-04", total: span(1000, 1000, 2000) },
    ]);
  });
});

test("the days before are what was charged, and the range of what is not known yet", () => {
  const { before, whole, total } = estimate({
    items: ["one"],
    prices: [{ item: "one", price: price("1.00") }],
    before: [
      { day: "2026-02-27", charged: "310.00" },
      { day: "2026-02-28", charged: "40.00" },
      { day: "2026-03-01", expected: price("10.00", "20.00", "12.00") },
      { day: "2026-03-02", expected: price("5.00") },
    ],
  });
  expect(before).toEqual({
    charged: 35000,
    open: span(1500, 1700, 2500),
    days: ["2026-03-01", "2026-03-02"],
    total: span(36500, 36700, 37500),
  });
  expect([total, whole]).toEqual([span(100), span(36600, 36800, 37600)]);
});

test("what is charged once if needed is no visit's own: it may as well come at another", () => {
  const at = { visit: "recheck" };
  const { visits } = estimate({
    items: ["check", "sedation if needed", "swab if needed"],
    prices: [
      { item: "check", price: price("20.00"), per: "visit" as const, ...at },
      { item: "sedation", price: price("50.00"), ...at },
      { item: "swab", price: price("3.00"), per: "visit" as const, ...at },
    ],
    course: {
      visits: ["2026-03-10", "2026-03-12"].map((day, i) => visit(`recheck-${i + 1}`, "recheck", day)),
      purposes: [{ kind: "recheck", counts: counts(2, 2, 2) }],
    },
  });
  expect(visits.map(({ amount, own }) => [amount, own])).toEqual([
    [span(2000, 2000, 7300), span(2000, 2000, 2300)],
    [span(2000, 2000, 2300), span(2000, 2000, 2300)],
  ]);
});

test("what a package holds if needed takes nothing off what is charged for sure", () => {
  const { lines } = estimate({
    items: ["pack", "one"],
    prices: [
      { item: "pack", price: price("9.00"), includes: ["one if needed"] },
      { item: "one", price: price("1.00") },
    ],
  });
  expect(lines.map(({ item, when, included, total }) => [item, when, included, total.high])).toEqual([
    ["pack", null, 0, 900],
    ["one", null, 0, 100],
    ["one", "needed", 1, 0],
  ]);
});

describe("discounts", () => {
  const two = {
    items: ["one", "two"],
    taxes: [
      { name: "five", rate: "5", inclusive: "no" as const },
      { name: "seven", rate: "7", inclusive: "no" as const },
      { name: "vat", rate: "20", inclusive: "yes" as const },
    ],
    prices: [
      { item: "one", price: price("100.00"), tax: ["five", "seven"] },
      { item: "two", price: price("60.00"), tax: "vat" },
    ],
  };
  const taken = (discounts: NonNullable<Parameters<typeof estimate>[0]["discounts"]>) => {
    const { discounts: off, taxes, total } = estimate({ ...two, discounts });
    return [off.map(({ amount }) => amount.high), taxes.map(({ amount }) => amount.high), total.high];
  };

  test("without one: each tax from the price before tax, several on a line", () => {
    expect(taken([])).toEqual([[], [500, 700, 1000], 17200]);
  });

  test("a share of a line comes off before its taxes", () => {
    expect(taken([{ off: { percent: "10" }, on: "One" }])).toEqual([[1000], [450, 630, 1000], 16080]);
  });

  test("is told by what it comes off, its name and its percent, as far as it has them", () => {
    const discounts = [
      { off: { percent: "10" }, on: "One" },
      { off: { amount: "16.00" }, name: "rescue" },
    ];
    expect(estimate({ ...two, discounts }).discounts).toMatchObject([
      { on: { en: "one" }, name: null, percent: "10" },
      { on: null, name: { en: "rescue" }, percent: null },
    ]);
  });

  test("an amount off the whole comes off every line in its share", () => {
    expect(taken([{ off: { amount: "16.00" } }])).toEqual([[1600], [450, 630, 900], 15480]);
  });

  test("the line first, then the whole", () => {
    const line = { off: { amount: "20.00" }, on: "one" };
    const whole = { off: { percent: "50" } };
    expect(taken([line, whole])).toEqual([[2000, 7000], [200, 280, 500], 7480]);
    expect(taken([whole, line])).toEqual([[7000, 2000], [200, 280, 500], 7480]);
  });

  test("an amount comes off the first bills until it is used up", () => {
    const { byDate, discounts } = estimate({ ...given, items: ["change"], discounts: [{ off: { amount: "70.00" } }] });
    expect(discounts[0]?.amount).toEqual(span(7000));
    expect(byDate.map(({ total }) => total.high)).toEqual([0, 3000, 8000]);
  });
});

describe("deposit and cash", () => {
  const one = { items: ["one"], prices: [{ item: "one", price: price("100.01", "200.00") }] };

  test("a share of the likely total, less what is paid; the plan before the clinic", () => {
    const terms = { deposit: { percent: "50" } };
    expect(estimate({ ...one, terms, paid: "30.00" }).deposit).toEqual({ asked: 7501, due: 4501 });
    expect(estimate({ ...one, terms, paid: "100.00" }).deposit).toEqual({ asked: 7501, due: 0 });
    expect(estimate({ ...one, terms, deposit: { amount: "20.00" } }).deposit).toEqual({ asked: 2000, due: 2000 });
    expect(estimate(one).deposit).toBeNull();
  });

  const inCash = (country: string, currency: string, written: string) =>
    estimate({ country, currency, items: ["one"], prices: [{ item: "one", price: price(written) }] }).cash?.total.high;

  /** Government of Canada, Budget 2012, "Rounding"; as in facts.json, cash.round.ca. */
  test.each([0, 0, 0, 5, 5, 5, 5, 5, 10, 10].map((to, cents) => [cents, to]))("Canada: %i cents to %i", (cents, to) => {
    expect(inCash("CA", "CAD", `7.0${cents}`)).toBe(700 + to);
  });

  /** Bank Negara Malaysia, Rounding Mechanism: the amounts of its table, by its general guidelines. */
  test.each([
    ["82.01", 8200],
    ["82.03", 8205],
    ["82.06", 8205],
    ["82.08", 8210],
  ])("Malaysia: %s", (written, cash) => {
    expect(inCash("MY", "MYR", written)).toBe(cash);
  });

  /** Finland, act 890/2000, section 1. */
  test.each([
    ["0.01", 1],
    ["0.02", 2],
    ["0.03", 5],
    ["4.02", 400],
    ["4.08", 410],
  ])("Finland: %s", (written, cash) => {
    expect(inCash("FI", "EUR", written)).toBe(cash);
  });

  test("elsewhere, or in another currency, none", () => {
    expect(inCash("US", "USD", "1.01")).toBeUndefined();
    expect(inCash("CA", "USD", "1.01")).toBeUndefined();
  });

  /** Canada Revenue Agency, GST/HST Info Sheet GI-131: 100 screws at 1.79, 13 % HST, 202.27; in cash 202.25. */
  test("the example of the revenue agency: tax first, then cash", () => {
    const { taxes, total, cash } = estimate({
      country: "CA",
      currency: "CAD",
      items: ["screws x 100"],
      taxes: [{ name: "HST", rate: "13", inclusive: "no" }],
      prices: [{ item: "screws", price: price("1.79"), tax: "HST" }],
    });
    expect([taxes[0]?.amount.high, total.high, cash?.total.high]).toEqual([2327, 20227, 20225]);
  });
});

describe("what it is called", () => {
  test("an estimate, unless the clinic says quote", () => {
    expect(estimate({ items: [], prices: [] }).called).toBe("estimate");
    expect(estimate({ items: [], terms: { called: "quote" } }).called).toBe("quote");
  });
});
