import { describe, expect, test } from "vitest";
import { minorDigits, toMinor } from "#compute/costs/money.js";
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
