import { describe, expect, test } from "vitest";
import { inCash, toStep } from "#compute/costs/cash.js";
import { minorDigits, toMinor } from "#compute/costs/money.js";
import { isCalled } from "#compute/costs/taxes.js";
import type { Clinic } from "#plan/plan.js";
import type { CashRounding } from "#tables/cash.js";
import { estimate, price } from "./help.js";

/** ISO 4217 table A.1, as in the open currency-codes data set. */
const iso4217: Record<string, number> = {
  ...{ USD: 2, EUR: 2, GBP: 2, CAD: 2, MXN: 2, BRL: 2, CNY: 2 },
  ...{ JPY: 0, KRW: 0, VND: 0, CLP: 0, ISK: 0 },
  ...{ KWD: 3, BHD: 3, JOD: 3, TND: 3 },
};

describe("money", () => {
  test.each(Object.entries(iso4217))("%s has %i decimals", (currency, digits) => {
    expect(minorDigits(currency)).toBe(digits);
  });

  test("three letters that are no currency have none", () => {
    expect(minorDigits("ZZZ")).toBeNull();
  });

  test("amounts come to whole minor units", () => {
    expect(toMinor("48.00", 2)).toBe(4800);
    expect(toMinor("0.07", 2)).toBe(7);
    expect(toMinor("8.5", 3)).toBe(8500);
    expect(toMinor("999999999.999", 3)).toBe(999_999_999_999);
  });
});

describe("tax", () => {
  /** Canada, Budget 2012, "Rounding": coffee at 1.83 and a sandwich at 2.86, with 5 % tax, are 4.92. */
  test("the example of Canada's budget", () => {
    const { subtotal, taxes, total, cash } = estimate({
      country: "CA",
      currency: "CAD",
      items: ["one", "two"],
      taxes: [{ name: "GST", rate: "5", inclusive: "no" }],
      prices: [
        { item: "one", price: price("1.83"), tax: "GST" },
        { item: "two", price: price("2.86"), tax: "GST" },
      ],
    });
    expect([subtotal.high, taxes[0]?.amount.high, total.high]).toEqual([469, 23, 492]);
    expect(cash?.total.high).toBe(490);
  });

  /** The example of a 2013 report of the same guidance: 689.93 at 12 % is 82.79 of tax and 772.72 in all. */
  test("the example of the news report", () => {
    const { taxes, total, cash } = estimate({
      country: "CA",
      currency: "CAD",
      items: ["one"],
      taxes: [{ name: "HST", rate: "12", inclusive: "no" }],
      prices: [{ item: "one", price: price("689.93"), tax: "HST" }],
    });
    expect([taxes[0]?.amount.high, total.high, cash?.total.high]).toEqual([8279, 77272, 77270]);
  });

  test("a tax that prices hold is shown, and not added again: 20 % in 120.00 is 20.00", () => {
    const { subtotal, taxes, total } = estimate({
      currency: "GBP",
      items: ["one"],
      taxes: [{ name: "VAT", rate: "20", inclusive: "yes" }],
      prices: [{ item: "one", price: price("120.00"), tax: "vat" }],
    });
    expect(taxes).toEqual([
      { name: { en: "VAT" }, percent: "20", inclusive: true, amount: { low: 2000, likely: 2000, high: 2000 } },
    ]);
    expect([subtotal.high, total.high]).toEqual([12000, 12000]);
  });

  /** HM Revenue & Customs, "Calculating VAT for VAT-inclusive and VAT-exclusive prices": 100 and 20 %, 100 and 5 %. */
  test.each([
    ["20", 2000, 12000],
    ["5", 500, 10500],
  ])("the example of the revenue at %s %%, exclusive and back again", (rate, tax, gross) => {
    const with_ = (inclusive: "yes" | "no", amount: string) => {
      const { taxes, total } = estimate({
        currency: "GBP",
        items: ["one"],
        taxes: [{ name: "VAT", rate, inclusive }],
        prices: [{ item: "one", price: price(amount), tax: "VAT" }],
      });
      return [taxes[0]?.amount.high, total.high];
    };
    expect(with_("no", "100.00")).toEqual([tax, gross]);
    expect(with_("yes", `${gross / 100}.00`)).toEqual([tax, gross]);
  });

  test("half a unit is rounded up, on each line: 10 % of 0.05 is 0.01, twice 0.02", () => {
    const { taxes } = estimate({
      items: ["one", "two"],
      taxes: [{ name: "tax", rate: "10", inclusive: "no" }],
      prices: [
        { item: "one", price: price("0.05"), tax: "tax" },
        { item: "two", price: price("0.05"), tax: "tax" },
      ],
    });
    expect(taxes[0]?.amount.high).toBe(2);
  });

  test("only taxes that some line bears are listed", () => {
    const { taxes } = estimate({
      items: ["one"],
      taxes: [{ name: "tax", rate: "10", inclusive: "no" }],
      prices: [{ item: "one", price: price("1.00") }],
    });
    expect(taxes).toEqual([]);
  });
});

describe("cash", () => {
  // The rows of shared/cash.json.
  const rules: CashRounding[] = [
    { country: "FI", currency: "EUR", step: 5, from: 3, source: "Finland, act 890/2000" },
    { country: "CA", currency: "CAD", step: 5, from: 0, source: "Canada, Budget 2012" },
  ];
  const span = { low: 2, likely: 7, high: 8 };
  const paid = (country: string, currency: string) =>
    inCash(rules, { country, currency } as Clinic, { total: span, balance: span })?.total ?? null;

  test("is rounded by the rule of the clinic's country, in that country's own money", () => {
    expect(paid("FI", "EUR")).toEqual({ low: 2, likely: 5, high: 10 });
    expect(paid("CA", "CAD")).toEqual({ low: 0, likely: 5, high: 10 });
    for (const [country, currency] of [
      ["CA", "USD"],
      ["US", "CAD"],
      ["CA", "EUR"],
      ["US", "USD"],
    ])
      expect(paid(country ?? "", currency ?? "")).toBeNull();
  });

  test("stays as it is below the amount its rule begins at, and is rounded from there on", () => {
    expect([2, 3, 4, 12, 13, 18].map((amount) => toStep(amount, { step: 5, from: 13 }))).toEqual([2, 3, 4, 12, 15, 20]);
  });
});

test("a tax is meant by its name in any language, whatever the case and the spaces", () => {
  const tax = { name: { en: "GST", fr: "TPS" }, percent: "5", inclusive: false };
  expect(["GST", " gst", "tps", "TVQ"].map((name) => isCalled(tax, name))).toEqual([true, true, true, false]);
});
