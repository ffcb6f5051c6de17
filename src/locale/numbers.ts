import { Decimal } from "decimal.js";
import { plainSpaces } from "./spaces.js";

export type Numbers = ReturnType<typeof numbersOf>;

/** Numbers and money, exactly: decimals come as strings, money in whole minor units. */
export function numbersOf(tag: string) {
  const plain = new Intl.NumberFormat(tag, { maximumFractionDigits: 20, useGrouping: "min2" });
  const currencies = new Map<string, Intl.NumberFormat>();
  const currency = (code: string) => {
    const format = currencies.get(code) ?? new Intl.NumberFormat(tag, { style: "currency", currency: code });
    currencies.set(code, format);
    return format;
  };
  const whole = new Intl.NumberFormat(tag, { useGrouping: false });

  return {
    /** "0.5" as "0.5" or "0,5"; never a trailing nought, always a leading one. */
    number: (value: string | number) => plain.format(String(value) as Intl.StringNumericLiteral),
    /** 12550 minor units of USD as "$125.50". */
    money: (minor: number, code: string) => {
      const format = currency(code);
      const places = format.resolvedOptions().maximumFractionDigits ?? 2;
      const exact = new Decimal(minor).div(new Decimal(10).pow(places)).toFixed();
      return plainSpaces(format.format(exact as Intl.StringNumericLiteral));
    },
    /** The ten digits of the language, nought first. */
    digits: Array.from({ length: 10 }, (_, digit) => whole.format(digit)).join(""),
  };
}
