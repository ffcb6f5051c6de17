import type { Clinic, Plan } from "#plan/plan.js";
import { nearest } from "#problems/near.js";
import { type Place, placeOf } from "#problems/place.js";
import { type Problem, problem } from "#problems/problem.js";
import type { Span, Told } from "../facts.js";
import { toldIn } from "../told.js";
import { keyOf } from "./key.js";
import { rangeOf } from "./price-range.js";
import { isCalled, namesOf, type Tax, taxesOf } from "./taxes.js";
import { inKg, priceFor } from "./weight-band.js";

type Row = Clinic["prices"][number];

/** A row of the clinic's price list for one patient. unit is in minor units; visit is the kind of visit it is charged for. */
export type Price = {
  item: string;
  name: Told;
  unit: Span;
  byTime: Row["by time"];
  per: Row["per"];
  visit: string | null;
  /** What a package holds, as written, and where; none for any other row. */
  includes: { text: string; at: Place }[];
  taxes: Tax[];
};

export type PriceList = { prices: Map<string, Price>; taxes: Tax[] };

/** The clinic's prices by key, and its taxes. A row that cannot be used is told, and stands in the list all the same. */
export function readPriceList(plan: Plan, digits: number): { list: PriceList; problems: Problem[] } {
  const { clinic, places, patient } = plan;
  const { taxes, problems } = taxesOf(clinic, places);
  const prices = new Map<string, Price>();
  for (const [index, row] of clinic.prices.entries()) {
    const at = (...path: (string | number)[]) => placeOf(places, "clinic", "prices", index, ...path);
    if (prices.has(keyOf(row.item))) problems.push(problem("price-twice", at("item"), { item: row.item }));
    const borne = [row.tax ?? []]
      .flat()
      .map((name, one) => ({ name, at: Array.isArray(row.tax) ? at("tax", one) : at("tax") }));
    problems.push(...checkBands(row, at), ...checkTaxNames(row, borne, taxes));
    prices.set(keyOf(row.item), {
      item: row.item,
      name: toldIn(row.name ?? row.item, clinic.language),
      unit: rangeOf(priceFor(row, patient.weight), digits),
      byTime: row["by time"],
      per: row.per,
      visit: row.visit === undefined ? null : kindOf(row.visit),
      includes: row.includes.map((text, content) => ({ text, at: at("includes", content) })),
      taxes: taxes.filter((tax) => borne.some(({ name }) => isCalled(tax, name))),
    });
  }
  return { list: { prices, taxes }, problems };
}

function checkBands(row: Row, at: (...path: (string | number)[]) => Place): Problem[] {
  const weights = row["by weight"].map((band) => inKg(band["up to"]).toString());
  const times = row["by time"].map(({ when }) => when);
  return [
    ...row["by weight"].flatMap(({ "up to": { value, unit } }, band) =>
      weights.indexOf(weights[band] ?? "") < band
        ? [problem("weight-band-twice", at("by weight", band, "up to"), { given: `${value} ${unit}` })]
        : [],
    ),
    ...times.flatMap((when, band) =>
      times.indexOf(when) < band ? [problem("time-band-twice", at("by time", band, "when"), { when })] : [],
    ),
    ...(times.length > 0 && row.per !== "visit"
      ? [problem("time-band-without-visit", at("by time"), { item: row.item })]
      : []),
    ...(row.includes.length > 0 && row.per !== "once"
      ? [problem("package-not-firm", at("per"), { item: row.item })]
      : []),
  ];
}

const checkTaxNames = (
  { item }: Row,
  borne: readonly { name: string; at: Place }[],
  taxes: readonly Tax[],
): Problem[] =>
  borne
    .filter(({ name }) => !taxes.some((tax) => isCalled(tax, name)))
    .map(({ name, at }) =>
      problem("tax-unknown", at, { item, tax: name, near: nearest(name, taxes.flatMap(namesOf)) }),
    );

/** "bandage change" and "bandage-change" are the same kind of visit. */
const kindOf = (visit: string) => keyOf(visit).replaceAll(" ", "-");
