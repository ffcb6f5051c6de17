import { type Fault, scalar } from "./scalar.js";

/** "48.00", "48.00 EUR" or "EUR 48.00", kept as written with the currency last; whether it is the clinic's is seen later. */
function readMoney(text: string): string | Fault {
  const [, before, sign, whole = "", part, after] =
    /^(?:([A-Z]{3})\s*)?([-\u2212])?(\d+)(\.\d{1,3})?(?:\s*([A-Z]{3}))?$/u.exec(text) ?? [];
  if (whole === "" || (before && after)) return { fault: "price-unreadable", values: { given: text } };
  if (sign) return { fault: "price-negative", values: { given: text } };
  if (whole.length > mostDigits) return { fault: "price-too-large", values: { given: text, digits: mostDigits } };
  return [whole + (part ?? ""), before ?? after].filter((word) => word).join(" ");
}

/** No price of a clinic has more before its point. */
const mostDigits = 9;

/** An amount of money in the clinic's currency, "48.00"; kept as written, in exact decimals. */
export const price = scalar(
  {
    title: "Amount of money",
    description: "In the clinic's currency, without its sign",
    examples: ["48.00", "48.00 USD"],
  },
  readMoney,
);

/** One price, a range, or a range of which one is the likeliest: "48.00", "65.00-90.00", "65.00-90.00, likely 70.00". */
export const priceRange = scalar(
  {
    title: "Price",
    description: "One price, or lowest-highest; the middle is likely unless one is named",
    examples: ["48.00", "65.00-90.00", "65.00-90.00, likely 70.00"],
  },
  (text) => {
    const [, range = text, likely] = /^(.*\S)\s*,\s*likely\s+(\S.*)$/u.exec(text) ?? [];
    const [low = "", high = low, ...more] = range.split(/(?<=\S)\s*[-\u2013]\s*/u);
    if (more.length > 0) return { fault: "price-unreadable", values: { given: text } };
    const ends = [low, high, ...(likely === undefined ? [] : [likely])].map(readMoney);
    const wrong = ends.find((end) => typeof end === "object");
    if (wrong) return wrong;
    const [lowest = "", highest = "", middle = null] = ends.map(String);
    return { low: lowest, high: highest, likely: middle };
  },
);

function readPercent(text: string): string | Fault {
  const [, number] = /^(\d{1,9}(?:\.\d{1,4})?)\s*%$/.exec(text) ?? [];
  if (number === undefined) return { fault: "percent-unreadable", values: { given: text } };
  if (Number(number) > 100) return { fault: "percent-too-large", values: { given: text } };
  return number;
}

/** A share of a hundred, "8.25 %" as "8.25"; from 0 to 100. */
export const percent = scalar(
  { title: "Percent", description: "A number from 0 to 100 and %", examples: ["8.25 %"] },
  readPercent,
);

/** A share or an amount of money: "10 %" or "25.00". */
export const shareOrAmount = scalar(
  { title: "Share or amount", description: "A number from 0 to 100 and %, or money", examples: ["10 %", "25.00"] },
  (text): { percent: string } | { amount: string } | Fault => {
    const read = text.endsWith("%") ? readPercent(text) : readMoney(text);
    if (typeof read === "object") return read;
    return text.endsWith("%") ? { percent: read } : { amount: read };
  },
);

/** A whole number from 0, "3". */
export const whole = scalar(
  { title: "Whole number", description: "A whole number from 0", examples: ["0", "3"] },
  (text): number | Fault =>
    /^\d{1,4}$/.test(text) ? Number(text) : { fault: "number-unreadable", values: { given: text } },
);

/** A whole number from 1, "20". */
export const counting = scalar(
  { title: "Whole number", description: "A whole number from 1", examples: ["1", "20"] },
  (text): number | Fault => {
    if (!/^\d{1,4}$/.test(text)) return { fault: "number-unreadable", values: { given: text } };
    return Number(text) > 0 ? Number(text) : { fault: "number-not-positive", values: { given: text } };
  },
);
