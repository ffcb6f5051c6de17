import type { CostLine } from "#compute/facts.js";
import { placeText } from "#problems/place.js";
import { moneyOn } from "../helpers/values.js";
import type { Fragment } from "../holes.js";
import { amountOn, type Page, sayOn, textOn, type Values } from "../page.js";

/** How many of an item, what one costs, and whether it is a maybe: "7 to 9, $48.00 each", "up to 3, if needed"; or null. */
export function detailsOn(page: Page, line: CostLine): Fragment | null {
  const say = (key: string, values: Values = {}) => sayOn(page, `handout:estimate.line.${key}`, values);
  const maybe = line.when ?? (line.dependsOn === null ? null : "done");
  const details = [
    ...countOn(page, line, say),
    ...(maybe === null ? [] : [say(maybe)]),
    ...(line.included > 0 ? [say("included", { count: line.included })] : []),
  ];
  return details.length === 0 ? null : details.reduce((first, second) => say("and", { first, second }));
}

/** One of a thing needs no number. */
function countOn(page: Page, line: CostLine, say: (key: string, values?: Values) => Fragment): Fragment[] {
  const { quantity, of, unit, from } = line;
  const { fewest, most } = quantity;
  if (of === null && most <= 1) return [];
  const number = (count: number) =>
    textOn(page, of === null ? page.voice.number(count) : amountOn(page, { value: String(count), unit: of }));
  const values = { low: number(fewest), high: number(most) };
  const count = fewest === most ? number(most) : fewest === 0 ? say("up-to", values) : say("range", values);
  const each = of === null && unit.low === unit.high && fewest > 0;
  return each ? [count, say("each", { amount: page.holes.inline(moneyOn(page, unit.low, placeText(from))) })] : [count];
}
