import { describe, expect, test } from "vitest";
import type { Course } from "#compute/facts.js";
import { counts, estimate, type Given, price, span, visit } from "./help.js";

const only = (given: Given) => {
  const [line] = estimate(given).lines;
  if (!line) throw new Error("no line");
  return line;
};

describe("a price by weight", () => {
  const weighed = (value: string, unit: "kg" | "lb" = "kg") =>
    only({
      items: ["sedation"],
      weight: { value, unit },
      prices: [
        {
          item: "sedation",
          price: price("95.00"),
          "by weight": [
            { "up to": { value: "25", unit: "kg" }, price: price("65.00") },
            { "up to": { value: "10", unit: "kg" }, price: price("45.00") },
          ],
        },
      ],
    }).total.high;

  test.each([
    ["4.2", "kg", 4500],
    ["10", "kg", 4500],
    ["10.01", "kg", 6500],
    ["25.0", "kg", 6500],
    ["25.1", "kg", 9500],
    // 22 lb are 9.979 kg, 22.05 lb are 10.0017 kg.
    ["22", "lb", 4500],
    ["22.05", "lb", 6500],
  ] as const)("%s %s: the lightest band that reaches it, however they are written", (value, unit, cost) => {
    expect(weighed(value, unit)).toBe(cost);
  });
});

describe("a range that names its likely price", () => {
  test("does not take the middle", () => {
    expect(only({ items: ["one"], prices: [{ item: "one", price: price("65.00", "90.00", "70.00") }] }).total).toEqual(
      span(6500, 7000, 9000),
    );
  });
});

describe("a price by time", () => {
  const change = {
    item: "change",
    price: price("48.00"),
    per: "visit" as const,
    visit: "change",
    "by time": [
      { when: "after hours" as const, more: { amount: "24.00" } },
      { when: "weekend" as const, more: { percent: "12.5" } },
    ],
  };
  const at = (when: Parameters<typeof visit>[2], clinic: Given["clinic"] = {}) =>
    only({
      items: ["change"],
      prices: [change],
      clinic,
      course: { visits: [visit("c", "change", when)], purposes: [{ kind: "change", counts: counts(1, 1, 1) }] },
    }).total;

  test.each([
    ["in hours", "2026-03-03T09:30", 4800],
    ["at the minute it opens", "2026-03-03T08:00", 4800],
    ["before it opens", "2026-03-03T07:59", 7200],
    ["at the minute it closes", "2026-03-03T18:00", 7200],
    ["at night", "2026-03-03T23:10", 7200],
    ["on Saturday in hours", "2026-03-07T09:30", 5400],
    ["on Saturday after hours: the band written first", "2026-03-07T14:00", 7200],
    ["on Sunday, when it is closed", "2026-03-08T10:00", 7200],
  ])("booked %s", (_, when, cost) => {
    expect(at(when)).toEqual(span(cost));
  });

  test("the clinic says which days are its weekend", () => {
    expect(at("2026-03-06T09:30", { weekend: ["friday"] })).toEqual(span(5400));
    expect(at("2026-03-07T09:30", { weekend: ["friday"] })).toEqual(span(4800));
  });

  test("not booked: from the cheapest of its open days to the dearest, likely the ideal day", () => {
    expect(at(["2026-03-05", "2026-03-06", "2026-03-09"])).toEqual(span(4800, 4800, 5400));
    expect(at(["2026-03-07", "2026-03-07", "2026-03-08"])).toEqual(span(5400));
  });

  test("not booked, on days of which some are closed, or all", () => {
    const closed = { closed: ["2026-03-07"] };
    expect(at(["2026-03-06", "2026-03-06", "2026-03-08"], closed)).toEqual(span(4800));
    expect(at(["2026-03-07", "2026-03-07", "2026-03-08"], closed)).toEqual(span(5400));
  });

  test("a closed holiday of the clinic is after hours", () => {
    expect(at("2026-03-03T09:30", { closed: ["2026-03-03"] })).toEqual(span(7200));
  });
});

describe("a package", () => {
  const course: Partial<Course> = {
    visits: ["03", "04", "05", "06"].map((day, i) =>
      visit(`c${i}`, "change", `2026-03-${day}`, null, i < 2 ? "expected" : "possible"),
    ),
    purposes: [{ kind: "change", counts: counts(2, 3, 4) }],
  };
  const prices = [
    { item: "package", price: price("100.00"), includes: ["change x 2", "gauze x 3"] },
    { item: "change", price: price("48.00"), per: "visit" as const, visit: "change" },
    { item: "gauze", price: price("2.00") },
  ];

  test("holds what it says, and the rest is charged, though the plan names the package alone", () => {
    const { lines, total } = estimate({ items: ["package"], prices, course });
    expect(lines.map(({ item, quantity, included, total }) => [item, quantity, included, total])).toEqual([
      ["package", counts(1, 1, 1), 0, span(10000)],
      ["change", counts(2, 3, 4), 2, span(0, 4800, 9600)],
      ["gauze", counts(3, 3, 3), 3, span(0)],
    ]);
    expect(total).toEqual(span(10000, 14800, 19600));
  });

  test("an item that the plan has too is not entered twice", () => {
    const { lines, total } = estimate({ items: ["gauze x 5", "package"], prices, course });
    expect(lines.map(({ item }) => item)).toEqual(["gauze", "package", "change"]);
    expect(total).toEqual(span(10400, 15200, 20000));
  });

  test("bought twice holds twice as much", () => {
    expect(estimate({ items: ["package x 2"], prices, course }).total).toEqual(span(20000));
  });
});
