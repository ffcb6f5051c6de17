import { Decimal } from "decimal.js";
import { directionOf } from "./direction.js";
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
  /** "US$" in a line of Arabic would be seen as "$US": it is kept to itself (UAX #9, LRI and PDI). */
  const sign = (text: string) =>
    directionOf(tag) === "rtl" && /\p{Script=Latin}/u.test(text) ? `\u2066${text}\u2069` : text;
  const whole = new Intl.NumberFormat(tag, { useGrouping: false });

  return {
    /** "0.5" as "0.5" or "0,5"; never a trailing nought, always a leading one. */
    number: (value: string | number) => plain.format(String(value) as Intl.StringNumericLiteral),
    /** 12550 minor units of USD as "$125.50". */
    money: (minor: number, code: string) => {
      const format = currency(code);
      const places = format.resolvedOptions().maximumFractionDigits ?? 2;
      const exact = new Decimal(minor).div(new Decimal(10).pow(places)).toFixed();
      const parts = format.formatToParts(exact as unknown as number);
      return plainSpaces(parts.map(({ type, value }) => (type === "currency" ? sign(value) : value)).join(""));
    },
    /** The ten digits of the language, nought first. */
    digits: Array.from({ length: 10 }, (_, digit) => whole.format(digit)).join(""),
  };
}
