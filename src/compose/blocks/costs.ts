import type { Before, CostLine, Discount, Estimate, Span } from "#compute/facts.js";
import type { Block, Cell, Inline } from "#handout/handout.js";
import { placeText } from "#problems/place.js";
import { moneyOn } from "../helpers/values.js";
import type { Fragment } from "../holes.js";
import { lineOf } from "../inlines.js";
import { type Page, sayOn, type Values } from "../page.js";
import { isToldOn, toldOn } from "../told.js";
import { detailsOn } from "./cost-details.js";

type End = keyof Span;
const ends: End[] = ["low", "likely", "high"];
const cell = (inlines: Inline[], align: Cell["align"] = "end"): Cell => ({ inlines, align });
const off = ({ low, likely, high }: Span): Span => ({ low: -low, likely: -likely, high: -high });

/** The estimate: a row an item with its low, likely and high price, and the totals at the foot. */
export function costsOn(page: Page, estimate: Estimate): Block {
  const say = (key: string, values?: Values) =>
    lineOf(sayOn(page, `handout:estimate.${key}`, values).markdown, page.holes);
  const { lines, discounts, taxes, whole, before } = estimate;
  const spans = [
    ...[...lines, ...discounts, ...taxes].map((one) => ("total" in one ? one.total : one.amount)),
    whole,
    before.open,
  ];
  const shown = endsShown(spans);
  const amounts = (span: Span, from = placeText(estimate.from)): Cell[] =>
    shown.map((end) => cell([moneyOn(page, span[end], from)]));
  return {
    kind: "table",
    dense: true,
    caption: say("caption"),
    head: [
      cell(say("column.what"), "start"),
      ...shown.map((end) => cell(say(`column.${shown.length === 1 ? "price" : end}`))),
    ],
    rows: [
      ...soFar(page, before).map(({ name, amount }) => [cell(name, "start"), ...amounts(amount)]),
      ...lines.map((line) => [cell(nameOf(page, line), "start"), ...amounts(line.total, placeText(line.from))]),
    ],
    foot: [
      ...discounts.map((one) => [cell(discountName(page, one, estimate), "start"), ...amounts(off(one.amount))]),
      ...taxes.map((tax) => {
        const values = {
          tax: page.holes.inline(...toldOn(page, tax.name, estimate)),
          percent: page.voice.number(tax.percent),
        };
        return [cell(say(tax.inclusive ? "tax-within" : "tax", values), "start"), ...amounts(tax.amount)];
      }),
      [cell(say("total"), "start"), ...amounts(whole)],
    ],
  };
}

/** What came before: what was charged, and what was expected of the days that are not charged yet. */
function soFar(page: Page, { charged, open, days }: Before): { name: Inline[]; amount: Span }[] {
  const say = (key: string, values?: Values) =>
    lineOf(sayOn(page, `handout:estimate.so-far.${key}`, values).markdown, page.holes);
  const known = { low: charged, likely: charged, high: charged };
  return [
    ...(charged > 0 ? [{ name: say("charged"), amount: known }] : []),
    ...(open.high > 0
      ? [{ name: say("open", { days: page.voice.list(days.map(page.voice.monthDay)) }), amount: open }]
      : []),
  ];
}

/** No column says what its neighbour says: the low one goes where it is likely throughout, and so does the high one. */
function endsShown(spans: readonly Span[]): End[] {
  const likelyIs = (end: End) => spans.every((span) => span[end] === span.likely);
  return ends.filter((end) => end === "likely" || !likelyIs(end));
}

/** "Closing the wound: up to 2, if done" */
function nameOf(page: Page, line: CostLine): Inline[] {
  const details = detailsOn(page, line);
  const name = isToldOn(page, line.name) ? toldOn(page, line.name, line) : houseNameOn(page, line);
  if (!details) return name;
  return [...name, ...lineOf(sayOn(page, "handout:estimate.line.details", { details }).markdown, page.holes)];
}

const houseKey = {
  visit: (name: string) => `visits:${name}.name`,
  collar: (name: string) => `collars:${name}.name`,
  medicine: (name: string) => `medicines:name.${name}`,
};

/** What the house calls it in the page's language, where the clinic has no word of its own. */
function houseNameOn(page: Page, line: CostLine): Inline[] {
  if (!line.houseName) return toldOn(page, line.name, line);
  const { of, name } = line.houseName;
  return lineOf(page.voice.capital(sayOn(page, houseKey[of](name)).markdown), page.holes);
}

/** "Family discount, 10%", "Discount: bandage change" */
function discountName(page: Page, { name, on, percent }: Discount, estimate: Estimate): Inline[] {
  const hole = (told: NonNullable<Discount["name"]>): Fragment => page.holes.inline(...toldOn(page, told, estimate));
  const say = (key: string, values: Values = {}) => sayOn(page, `handout:estimate.${key}`, values);
  const plain = name ? hole(name) : say("discount");
  const what = percent === null ? plain : say("discount-percent", { what: plain, percent: page.voice.number(percent) });
  return lineOf((on ? say("discount-on", { what, on: hole(on) }) : what).markdown, page.holes);
}
