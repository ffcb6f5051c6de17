import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { percent, priceRange, shareOrAmount } from "#plan/scalars/number.js";
import { costKinds } from "#problems/costs.js";
import { costs, counts, price, told } from "./help.js";

const one = { item: "one", price: price("1.00") };

describe("problems of an estimate, each at its place", () => {
  test("no estimate, nothing to tell", () => {
    expect(costs({ items: null, prices: [one, one] })).toEqual({ value: null, problems: [] });
  });

  test("an item the price list does not have, with the nearest names", () => {
    const prices = ["bandage change", "bandages", "recheck"].map((item) => ({ ...one, item }));
    expect(told({ items: ["bandge change x 2"], prices })).toEqual([
      'item-unknown estimate/items/0+0: {"given":"bandge change","near":["bandage change"]}',
    ]);
  });

  test("an item with an impossible number of times, at the number", () => {
    const wrong = (times: string) => told({ items: [`one x ${times}`], prices: [one] });
    expect(wrong("0")).toEqual(['item-times-wrong estimate/items/0+6: {"given":"0","least":1,"most":999}']);
    expect(wrong("1.5")).toHaveLength(1);
    expect(wrong("1000")).toHaveLength(1);
    expect(wrong("999")).toHaveLength(0);
    expect(wrong("1")).toHaveLength(0);
  });

  test("every problem at once", () => {
    expect(told({ items: ["two", "three x 0"], prices: [one, one] }).map((line) => line.split(" ")[0])).toEqual([
      "price-twice",
      "item-unknown",
      "item-unknown",
      "item-times-wrong",
    ]);
  });

  test("two rows for one key, whatever their case and spaces", () => {
    expect(told({ items: [], prices: [one, { ...one, item: " One" }] })).toEqual([
      'price-twice clinic/prices/1/item+0: {"item":" One"}',
    ]);
  });

  test("a price that names a tax that is not listed, and a tax listed twice", () => {
    const taxes = ["sales tax", "Sales tax"].map((name) => ({ name, rate: "5", inclusive: "no" as const }));
    expect(told({ items: [], taxes, prices: [{ ...one, tax: "sale tax" }] })).toEqual([
      'tax-twice clinic/taxes/1/name+0: {"tax":"Sales tax"}',
      'tax-unknown clinic/prices/0/tax+0: {"item":"one","tax":"sale tax","near":["Sales tax","sales tax"]}',
    ]);
  });

  test("a tax that is not listed, at its place in a list of several", () => {
    const taxes = [{ name: "sales tax", rate: "5", inclusive: "no" as const }];
    expect(told({ items: [], taxes, prices: [{ ...one, tax: ["sales tax", "city tax"] }] })).toMatchObject([
      expect.stringContaining("tax-unknown clinic/prices/0/tax/1+0"),
    ]);
  });

  test("a kind of visit the course does not have", () => {
    const prices = [{ ...one, per: "visit" as const, visit: "recheks" }];
    const course = { purposes: [{ kind: "recheck", counts: counts(1, 1, 1) }] };
    expect(told({ items: ["one"], prices, course })).toEqual([
      'visit-not-in-course estimate/items/0+0: {"item":"one","visit":"recheks","near":["recheck"]}',
    ]);
  });

  test("what is done once at a visit the course does not have, and is not only a maybe of it", () => {
    const prices = [{ ...one, visit: "closure" }];
    const course = { purposes: [{ kind: "recheck", counts: counts(1, 1, 1) }] };
    const missing = 'visit-not-in-course estimate/items/0+0: {"item":"one","visit":"closure","near":[]}';
    expect(told({ items: ["one"], prices, course })).toEqual([]);
    expect(told({ items: ["one if needed"], prices, course })).toEqual([]);
    expect(told({ items: ["one if done"], prices, course })).toEqual([missing]);
    const closure = { purposes: [{ kind: "closure", counts: counts(0, 0, 1) }] };
    expect(told({ items: ["one if done"], prices, course: closure })).toEqual([]);
  });

  test("if done, and nothing says what", () => {
    expect(told({ items: ["one if done"], prices: [one] })).toEqual([
      'decision-not-named estimate/items/0+0: {"item":"one"}',
    ]);
  });

  test("a price by the unit of no medicine", () => {
    const prices = [{ ...one, per: "unit" as const }];
    expect(told({ items: ["one"], prices, medicines: [{ id: "on", name: "on", strength: null }] })).toEqual([
      'unit-not-dispensed estimate/items/0+0: {"item":"one","medicines":["on"]}',
    ]);
  });

  test("a price by the unit of another strength than the plan's", () => {
    const strength = { value: "100", unit: "mg" };
    const by = (item: string) =>
      told({
        items: [item],
        prices: [{ ...one, item, per: "unit" as const }],
        medicines: [{ id: "m", name: "m", strength, dispense: { value: "7", unit: "tablet" } }],
      });
    expect(by("m 25 mg")).toEqual([
      'unit-not-dispensed estimate/items/0+0: {"item":"m 25 mg","medicines":["m 100 mg"]}',
    ]);
    expect(by("m 100 mg/mL")).toHaveLength(1);
    for (const item of ["m", "m 100 mg", "m 100.0mg tablets", "m 30 of them"]) expect(by(item)).toEqual([]);
  });

  test("a price by the unit of a medicine by its name, its strength in whatever words, or none", () => {
    const by = (item: string, medicine: { name: string; strength: { value: string; unit: string } | null }) =>
      told({
        items: [item],
        prices: [{ ...one, item, per: "unit" as const }],
        medicines: [{ id: "m-2", dispense: { value: "7", unit: "tablet" }, ...medicine }],
      });
    const of = (value: string, unit: string) => ({ name: "m", strength: { value, unit } });
    expect(by("m", of("100", "mg"))).toEqual([]);
    expect(by("m 100 mg", { name: "m", strength: null })).toEqual([]);
    expect(by("m 5 mg plus 20 mg", { name: "m 5 mg plus", strength: { value: "20", unit: "mg" } })).toEqual([]);
    for (const unit of ["µg", "mcg"]) expect(by(`m 50 ${unit}`, of("50", "mcg"))).toEqual([]);
    for (const unit of ["IU", "unit", "units"]) expect(by(`m 100 ${unit}/mL`, of("100", "IU/mL"))).toEqual([]);
    expect(by("m 50 mcg", of("50", "mg"))).toHaveLength(1);
  });

  test("the same item twice is asked about; firm and maybe are two things", () => {
    expect(told({ items: ["one", "ONE"], prices: [one] })).toEqual(['item-twice estimate/items/1+0: {"item":"one"}']);
    expect(told({ items: ["one", "one if needed"], prices: [one] })).toEqual([]);
  });

  test("more decimals than the currency has, wherever money is written", () => {
    const terms = { "ring before passing": { amount: "5.001" } };
    expect(told({ items: [], prices: [{ ...one, price: price("1.000", "2.00") }], paid: "0.125", terms })).toEqual([
      'price-too-fine clinic/prices/0/price+0: {"given":"1.000","currency":"USD","digits":2}',
      'price-too-fine clinic/estimate/ring before passing+0: {"given":"5.001","currency":"USD","digits":2}',
      'price-too-fine estimate/paid+0: {"given":"0.125","currency":"USD","digits":2}',
    ]);
    expect(told({ items: [], currency: "JPY", prices: [{ ...one, price: price("300.0") }] })).toHaveLength(1);
    expect(told({ items: [], currency: "KWD", prices: [{ ...one, price: price("8.125") }] })).toHaveLength(0);
  });

  test("more decimals, or another currency, in what an estimate asks for or was charged before", () => {
    const visit = { ...one, per: "visit" as const, visit: "recheck" };
    const by = { ...visit, "by time": [{ when: "weekend" as const, more: { amount: "0.001" } }] };
    const before = [
      { day: "2026-03-01", charged: "1.00 EUR" },
      { day: "2026-03-02", expected: price("2.00", "1.001") },
    ];
    expect(told({ items: [], prices: [by], deposit: { amount: "5.001" }, before })).toEqual([
      'price-too-fine clinic/prices/0/by time/0/more+0: {"given":"0.001","currency":"USD","digits":2}',
      'currency-mismatch estimate/before/0/charged+0: {"given":"EUR","currency":"USD"}',
      'price-too-fine estimate/before/1/expected+0: {"given":"1.001","currency":"USD","digits":2}',
      'price-too-fine estimate/deposit+0: {"given":"5.001","currency":"USD","digits":2}',
    ]);
    const sound = [
      { day: "2026-03-01", charged: "1.00" },
      { day: "2026-03-02", expected: price("1.00", "2.00") },
    ];
    expect(told({ items: [], before: sound })).toEqual([]);
    expect(told({ items: [], before: [{ day: "2026-03-02", expected: price("2.00", "1.00") }] })).toEqual([
      'price-range-backwards estimate/before/0/expected+0: {"low":"2.00","high":"1.00"}',
    ]);
  });

  test("money in another currency than the clinic's, wherever it is written", () => {
    const given = { ...one, "by weight": [{ "up to": { value: "5", unit: "kg" as const }, price: price("1.00 EUR") }] };
    const terms = { deposit: { amount: "5.00 CAD" } };
    expect(
      told({ items: [], prices: [given], paid: "9.00 USD", terms, discounts: [{ off: { amount: "1.00 MXN" } }] }),
    ).toEqual([
      'currency-mismatch clinic/prices/0/by weight/0/price+0: {"given":"EUR","currency":"USD"}',
      'currency-mismatch clinic/estimate/deposit+0: {"given":"CAD","currency":"USD"}',
      'currency-mismatch estimate/discounts/0/off+0: {"given":"MXN","currency":"USD"}',
    ]);
  });

  test("a likely price outside its range", () => {
    expect(told({ items: [], prices: [{ ...one, price: price("65.00", "90.00", "60.00") }] })).toEqual([
      'price-likely-outside clinic/prices/0/price+0: {"likely":"60.00","low":"65.00","high":"90.00"}',
    ]);
  });

  test("two bands for one weight, in whatever unit, or for one time; a time without a visit", () => {
    const up = (value: string, unit: "kg" | "lb") => ({ "up to": { value, unit }, price: price("1.00") });
    const when = { when: "weekend" as const, more: { percent: "10" } };
    const row = { ...one, "by weight": [up("0.45359237", "kg"), up("1", "lb")], "by time": [when, when] };
    expect(told({ items: [], prices: [row] })).toEqual([
      'weight-band-twice clinic/prices/0/by weight/1/up to+0: {"given":"1 lb"}',
      'time-band-twice clinic/prices/0/by time/1/when+0: {"when":"weekend"}',
      'time-band-without-visit clinic/prices/0/by time+0: {"item":"one"}',
    ]);
  });

  test("a package that is a maybe, by the visit, in a package, or holds what nobody sells", () => {
    const pack = { item: "pack", price: price("9.00"), includes: ["one x 2", "two"] };
    const outer = { item: "outer", price: price("9.00"), per: "visit" as const, includes: ["pack"] };
    expect(told({ items: ["pack if needed", "outer"], prices: [one, pack, outer] })).toEqual([
      'package-not-firm clinic/prices/2/per+0: {"item":"outer"}',
      'package-not-firm estimate/items/0+0: {"item":"pack"}',
      'item-unknown clinic/prices/1/includes/1+0: {"given":"two","near":[]}',
      'package-in-package clinic/prices/2/includes/0+0: {"item":"pack"}',
    ]);
  });

  test("something off an item that is not there, twice off one thing, or more than it costs", () => {
    const off = { amount: "2.00" };
    expect(
      told({ items: ["one"], prices: [one], discounts: [{ off, on: "onne" }, { off }, { off: { percent: "5" } }] }),
    ).toEqual([
      'discount-item-missing estimate/discounts/0/on+0: {"given":"onne","near":["one"]}',
      'discount-twice estimate/discounts/2/off+0: {"given":"5 %"}',
    ]);
    expect(told({ items: ["one"], prices: [one], discounts: [{ off }] })).toEqual([
      'discount-over-cost estimate/discounts/0/off+0: {"off":{"minor":200,"currency":"USD"},"cost":{"minor":100,"currency":"USD"}}',
    ]);
    expect(told({ items: ["one x 2"], prices: [one], discounts: [{ off }] })).toEqual([]);
  });

  test("a deposit above all it can cost is asked about, at the plan or at the clinic", () => {
    const high = '{"deposit":{"minor":200,"currency":"USD"},"high":{"minor":100,"currency":"USD"}}';
    const deposit = { amount: "2.00" };
    expect(told({ items: ["one"], prices: [one], deposit })).toEqual([
      `deposit-over-estimate estimate/deposit+0: ${high}`,
    ]);
    expect(told({ items: ["one"], prices: [one], terms: { deposit } })).toEqual([
      `deposit-over-estimate clinic/estimate/deposit+0: ${high}`,
    ]);
    expect(told({ items: ["one x 2"], prices: [one], deposit })).toEqual([]);
  });

  test("a range from high to low", () => {
    expect(told({ items: [], prices: [{ ...one, price: price("90.00", "65.00") }] })).toEqual([
      'price-range-backwards clinic/prices/0/price+0: {"low":"90.00","high":"65.00"}',
    ]);
  });

  test("an amount no bill comes to, on a line or in all", () => {
    const huge = { ...one, price: price("999999999.00") };
    const half = { ...one, item: "half", price: price("999999999.00") };
    const most = '{"most":{"minor":1000000000000,"currency":"USD"}}';
    expect(told({ items: ["one x 11"], prices: [huge] })).toEqual([`amount-too-large estimate/items/0+0: ${most}`]);
    expect(told({ items: ["one x 6", "half x 6"], prices: [huge, half] })).toEqual([
      `amount-too-large estimate+0: ${most}`,
    ]);
    expect(costs({ items: ["one x 11"], prices: [huge] }).value).toBeNull();
    expect(told({ items: ["one x 10"], prices: [{ ...one, price: price("1000000000.00") }] })).toEqual([]);
  });

  test("more paid than it can cost is asked about, and the estimate still there", () => {
    const given = { items: ["one"], prices: [one], paid: "1.01" };
    expect(told(given)).toEqual([
      'paid-over-estimate estimate/paid+0: {"paid":{"minor":101,"currency":"USD"},"high":{"minor":100,"currency":"USD"}}',
    ]);
    expect(costs(given).value?.credit).toBe(1);
    expect(told({ ...given, paid: "1.00" })).toEqual([]);
  });

  test("a currency nobody has, with the nearest", () => {
    expect(told({ items: [], currency: "USA" })[0]).toMatch(/^currency-unknown clinic\/currency\+0: .*"near":\[.*USD/);
  });

  test("an estimate that holds for ever", () => {
    const terms = { valid: { value: "99999999999", unit: "week" as const } };
    expect(told({ items: [], terms })).toEqual([
      'valid-too-long clinic/estimate/valid+0: {"given":"99999999999 week","most":366}',
    ]);
  });
});

describe("amounts as they are typed", () => {
  const codes = (text: string) => {
    const read = priceRange.safeParse(text);
    return read.success
      ? read.data
      : read.error.issues.map((issue) => (issue.code === "custom" ? issue.params?.["fault"] : issue.code));
  };

  test.each([
    ["48.00", { low: "48.00", high: "48.00", likely: null }],
    ["65-90", { low: "65", high: "90", likely: null }],
    ["65.00 – 90.00, likely 70.00", { low: "65.00", high: "90.00", likely: "70.00" }],
    ["EUR 48.00", { low: "48.00 EUR", high: "48.00 EUR", likely: null }],
    ["48.00 EUR-50.00 EUR", { low: "48.00 EUR", high: "50.00 EUR", likely: null }],
    ["-5.00", ["price-negative"]],
    ["5.00--1", ["price-unreadable"]],
    ["5.00 - -1", ["price-negative"]],
    ["$48", ["price-unreadable"]],
    ["48,00", ["price-unreadable"]],
    ["1e9", ["price-unreadable"]],
    ["Infinity", ["price-unreadable"]],
    ["1-2-3", ["price-unreadable"]],
    ["EUR 48.00 EUR", ["price-unreadable"]],
    ["9999999999", ["price-too-large"]],
    ["1".repeat(400), ["price-too-large"]],
  ])("%s", (text, read) => {
    expect(codes(text)).toEqual(read);
  });

  test.each([
    ["8.25 %", "8.25"],
    ["100%", "100"],
    ["100.0001 %", "percent-too-large"],
    ["101 %", "percent-too-large"],
    ["-1 %", "percent-unreadable"],
    ["8.25", "percent-unreadable"],
  ])("percent %s", (text, read) => {
    const { data, error } = percent.safeParse(text);
    const [issue] = error?.issues ?? [];
    expect(data ?? (issue?.code === "custom" && issue.params?.["fault"])).toBe(read);
  });

  test("a share or an amount", () => {
    expect(shareOrAmount.parse("10 %")).toEqual({ percent: "10" });
    expect(shareOrAmount.parse("25.00")).toEqual({ amount: "25.00" });
    expect(shareOrAmount.safeParse("-25.00").success).toBe(false);
  });
});

type Sentences = Record<string, { what: string; hint: string }>;
const sentences = (language: string): Sentences =>
  JSON.parse(readFileSync(`locales/${language}/problems/costs.json`, "utf8"));

describe("the sentences", () => {
  test.each(["en", "es"])("in %s are there for each problem and for no other", (language) => {
    expect(Object.keys(sentences(language))).toEqual(Object.keys(costKinds));
  });

  test("show the same values in both languages", () => {
    const shown = (all: Sentences) =>
      Object.values(all).map(({ what, hint }) => [what, hint].map((text) => text.match(/\{\{\w+\}\}/g)?.toSorted()));
    expect(shown(sentences("es"))).toEqual(shown(sentences("en")));
  });
});
