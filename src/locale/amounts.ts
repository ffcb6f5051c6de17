import type { Numbers } from "./numbers.js";
import type { Say } from "./words.js";

type Amount = { value: string; unit: string };

const signs: Record<string, string> = { "25": "¼", "5": "½", "75": "¾" };
/** What is cut by hand is told in halves and quarters; what is measured, in decimals. */
const cutByHand = new Set(["tablet", "capsule"]);

/** The part of a tablet in an amount, {1.50, tablet} as {whole: "1", part: "5"}; null where there is none to cut. */
function cut({ value, unit }: Amount): { whole: string; part: string; sign: string } | null {
  const [whole = "0", fraction = ""] = value.split(".");
  const part = fraction.replace(/0+$/, "");
  const sign = signs[part];
  return sign !== undefined && cutByHand.has(unit) ? { whole, part, sign } : null;
}

export function amountsOf(numbers: Numbers, say: Say) {
  const figure = (amount: Amount): string => {
    const pieces = cut(amount);
    if (!pieces) return numbers.number(amount.value);
    return Number(pieces.whole) > 0 ? `${numbers.number(pieces.whole)}${pieces.sign}` : pieces.sign;
  };
  /** As short as it can be said, for a narrow cell: "½ tablet", "1½ tablets", "0.7 mL". Less than one whole is not many. */
  const short = (amount: Amount): string =>
    say(`units:${amount.unit}`, { value: figure(amount), count: Math.max(1, Number(amount.value)) });
  /** An amount in words: {0.5, tablet} "half a tablet (½)", {1.5, tablet} "1½ tablets", {375, mg} "375 mg". */
  const long = (amount: Amount): string => {
    const pieces = cut(amount);
    const value = figure(amount);
    if (!pieces || Number(pieces.whole) > 0) return say(`units:${amount.unit}`, { value, count: Number(amount.value) });
    return say(`units:${amount.unit}-part`, { value, context: pieces.part });
  };
  return { amount: long, shortAmount: short };
}
