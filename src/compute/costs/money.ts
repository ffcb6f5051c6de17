import { Decimal } from "decimal.js";

/** Enough digits that only whole-unit rounding, below, ever rounds anything. */
const Exact = Decimal.clone({ precision: 60 });
export const exact = (value: Decimal.Value): Decimal => new Exact(value);

/**
 * Whole minor units, a half rounded up; amounts are never negative here. The one rule of all prices, discounts and taxes:
 * ordinary rounding, as in the published examples the tests hold it against, and not to the even neighbour.
 */
export const roundHalfUp = (amount: Decimal): number => amount.toDecimalPlaces(0, Decimal.ROUND_HALF_UP).toNumber();

/** The most money we reckon with, in minor units: far above any bill, far below where a number loses a unit. */
export const mostMoney = 1_000_000_000_000;

/**
 * How many decimals a currency's amounts have (JPY 0, USD 2, KWD 3), or null where no such currency is known. These are the
 * digits Intl formats with: ISO 4217's, but none for a few currencies whose coins are no longer used, such as HUF.
 */
export function minorDigits(currency: string): number | null {
  if (!Intl.supportedValuesOf("currency").includes(currency)) return null;
  return new Intl.NumberFormat("en", { style: "currency", currency }).resolvedOptions().maximumFractionDigits ?? null;
}

/** An amount as it was written, "48.00" or "48.00 EUR". */
const partsOf = (written: string) => {
  const [number = "0", currency = null] = written.split(" ");
  return { number, currency };
};

/** Whether an amount has more decimals than its currency: "1.000" dollars may have been meant as a thousand. */
export const isTooFine = (written: string, digits: number): boolean =>
  (partsOf(written).number.split(".")[1] ?? "").length > digits;

/** The currency an amount was written with, if any. */
export const currencyOf = (written: string): string | null => partsOf(written).currency;

/** An amount as a decimal, without its currency. */
export const numberOf = (written: string): Decimal => exact(partsOf(written).number);

/** "48.00" in whole minor units: 4800. */
export const toMinor = (written: string, digits: number): number =>
  numberOf(written).times(exact(10).pow(digits)).toNumber();

/** What a share of an amount, or an amount of its own, comes to in minor units. */
export const partOf = (whole: number, part: ShareOrAmount, digits: number): number =>
  "percent" in part ? shareOf(whole, part.percent) : toMinor(part.amount, digits);

export const shareOf = (whole: number, percent: string): number => roundHalfUp(exact(whole).times(percent).div(100));

export type ShareOrAmount = { percent: string } | { amount: string };
