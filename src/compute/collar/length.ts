import { Decimal } from "decimal.js";
import type { Amount } from "../facts.js";

/** Exact by definition (international inch, 1959). */
const centimetres: Record<string, string> = { mm: "0.1", cm: "1", in: "2.54" };

/** A length in centimetres, exactly. */
export const cm = ({ value, unit }: Amount): Decimal => new Decimal(value).times(centimetres[unit] ?? Number.NaN);

/** A length in a unit for reading: cut, never rounded up, to a tenth, so that it promises no more than there is. */
export const inUnit = (length: Decimal, unit: string): Amount => ({
  value: length
    .div(centimetres[unit] ?? Number.NaN)
    .toDecimalPlaces(1, Decimal.ROUND_DOWN)
    .toString(),
  unit,
});

/** The least length in a unit that is still enough, to a tenth. */
export const atLeast = (length: Decimal, unit: string): string =>
  `${length
    .div(centimetres[unit] ?? Number.NaN)
    .toDecimalPlaces(1, Decimal.ROUND_UP)
    .toString()} ${unit}`;
