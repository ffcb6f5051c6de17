import type { Plan } from "#plan/plan.js";
import { type Place, placeOf } from "#problems/place.js";
import { type Problem, problem } from "#problems/problem.js";
import { currencyOf, isTooFine, numberOf, type ShareOrAmount } from "./money.js";

/** Every amount of money that the profile and the estimate name is in the clinic's currency and no finer than it has. */
export function checkMoney({ clinic, places, estimate }: Plan, digits: number): Problem[] {
  const amount = (given: string, at: Place): Problem[] => {
    const named = currencyOf(given);
    if (named !== null && named !== clinic.currency)
      return [problem("currency-mismatch", at, { given: named, currency: clinic.currency })];
    return isTooFine(given, digits)
      ? [problem("price-too-fine", at, { given, currency: clinic.currency, digits })]
      : [];
  };
  const part = (given: ShareOrAmount | undefined, at: Place) =>
    given && "amount" in given ? amount(given.amount, at) : [];
  const range = ({ low, high, likely }: Range, at: Place): Problem[] => {
    const ends = [...new Set([low, high, likely ?? low])];
    const problems = ends.flatMap((end) => amount(end, at));
    return problems.length > 0 ? problems : checkOrder({ low, high, likely }, at);
  };
  return [
    ...clinic.prices.flatMap((row, index) => {
      const at = (...path: (string | number)[]) => placeOf(places, "clinic", "prices", index, ...path);
      return [
        ...range(row.price, at("price")),
        ...row["by weight"].flatMap(({ price }, band) => range(price, at("by weight", band, "price"))),
        ...row["by time"].flatMap(({ more }, band) => part(more, at("by time", band, "more"))),
      ];
    }),
    ...part(clinic.estimate?.["ring before passing"], placeOf(places, "clinic", "estimate", "ring before passing")),
    ...part(clinic.estimate?.deposit, placeOf(places, "clinic", "estimate", "deposit")),
    ...(estimate ? amount(estimate.paid, placeOf(places, "estimate", "paid")) : []),
    ...(estimate?.before ?? []).flatMap(({ charged, expected }, index) => {
      const at = (field: string) => placeOf(places, "estimate", "before", index, field);
      return [
        ...(charged === undefined ? [] : amount(charged, at("charged"))),
        ...(expected === undefined ? [] : range(expected, at("expected"))),
      ];
    }),
    ...part(estimate?.deposit, placeOf(places, "estimate", "deposit")),
    ...(estimate?.discounts ?? []).flatMap(({ off }, index) =>
      part(off, placeOf(places, "estimate", "discounts", index, "off")),
    ),
  ];
}

type Range = { low: string; high: string; likely: string | null };

/** From the lowest to the highest, and the likely one between them. */
function checkOrder({ low, high, likely }: Range, at: Place): Problem[] {
  if (numberOf(low).gt(numberOf(high))) return [problem("price-range-backwards", at, { low, high })];
  if (likely === null || (numberOf(low).lte(numberOf(likely)) && numberOf(likely).lte(numberOf(high)))) return [];
  return [problem("price-likely-outside", at, { likely, low, high })];
}
