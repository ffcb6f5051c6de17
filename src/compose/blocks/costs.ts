import type { CostLine, Counts, Discount, Estimate, Span } from "#compute/facts.js";
import type { Block, Cell, Inline } from "#handout/handout.js";
import { placeText } from "#problems/place.js";
import { moneyOn } from "../helpers/values.js";
import type { Fragment } from "../holes.js";
import { lineOf } from "../inlines.js";
import { type Page, plainOn, sayOn, type Values } from "../page.js";
import { staffWordsOn, toldOn } from "../told.js";

const cell = (inlines: Inline[], align: Cell["align"] = "end"): Cell => ({ inlines, align });
const text = (words: string): Inline => ({ kind: "text", text: words });
const off = ({ low, likely, high }: Span): Span => ({ low: -low, likely: -likely, high: -high });

/** The estimate: a row an item with how many and the low, likely and high price, and the totals at the foot. */
export function costsOn(page: Page, estimate: Estimate): Block {
  const say = (key: string, values?: Values) =>
    lineOf(sayOn(page, `handout:estimate.${key}`, values).markdown, page.holes);
  const from = placeText(estimate.from);
  const span = ({ low, likely, high }: Span, place = from): Cell[] =>
    [low, likely, high].map((minor) => cell([moneyOn(page, minor, place)]));
  const sum = (label: Inline[], amount: Span): Cell[] => [cell(label, "start"), cell([]), ...span(amount)];
  const { paid } = estimate;

  return {
    kind: "table",
    caption: say("caption"),
    head: [
      cell(say("column.what"), "start"),
      cell(say("column.count"), "center"),
      cell(say("column.low")),
      cell(say("column.likely")),
      cell(say("column.high")),
    ],
    rows: estimate.lines.map((line) => [
      cell(nameOf(page, line), "start"),
      cell([text(countsOn(page, line.quantity))], "center"),
      ...span(line.total, placeText(line.from)),
    ]),
    foot: [
      ...estimate.discounts.map((discount) => sum(discountName(page, discount, estimate), off(discount.amount))),
      ...estimate.taxes.map(({ name, percent, inclusive, amount }) => {
        const tax = page.holes.inline(...staffWordsOn(page, name));
        return sum(say(inclusive ? "tax-within" : "tax", { tax, percent: page.voice.number(percent) }), amount);
      }),
      sum(say("total"), estimate.total),
      sum(say("today"), estimate.today),
      sum(say("paid"), { low: paid, likely: paid, high: paid }),
      sum(say("balance"), estimate.balance),
    ],
  };
}

/** "Closing the wound (only if it is done)" */
function nameOf(page: Page, line: CostLine): Inline[] {
  const maybe = line.when ?? (line.dependsOn === null ? null : "done");
  const notes = [
    ...(maybe === null ? [] : [plainOn(page, `handout:estimate.only-if.${maybe}`)]),
    ...(line.included > 0 ? [plainOn(page, "handout:estimate.included", { count: line.included })] : []),
  ];
  return [...toldOn(page, line.name, line), ...notes.map((note) => text(` ${note}`))];
}

/** "Family discount, 10%", "Discount: bandage change" */
function discountName(page: Page, { name, on, percent }: Discount, estimate: Estimate): Inline[] {
  const hole = (told: NonNullable<Discount["name"]>): Fragment => page.holes.inline(...toldOn(page, told, estimate));
  const say = (key: string, values: Values = {}) => sayOn(page, `handout:estimate.${key}`, values);
  const plain = name ? hole(name) : say("discount");
  const what = percent === null ? plain : say("discount-percent", { what: plain, percent: page.voice.number(percent) });
  return lineOf((on ? say("discount-on", { what, on: hole(on) }) : what).markdown, page.holes);
}

/** "3", or "3 to 8". */
const countsOn = (page: Page, { fewest, most }: Counts): string =>
  fewest === most
    ? page.voice.number(fewest)
    : plainOn(page, "handout:estimate.from-to", { low: page.voice.number(fewest), high: page.voice.number(most) });
