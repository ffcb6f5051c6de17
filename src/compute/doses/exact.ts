import { Decimal } from "decimal.js";
import type { Amount } from "../facts.js";

/** Decimals wide enough that no product of what a plan can hold is rounded, and no quotient looks like a tie it is not. */
export const Exact = Decimal.clone({ precision: 60 });
export type Exact = Decimal;

/** Kilograms in a pound, by the definition of the international pound. */
const kilogramsPerPound = new Exact("0.45359237");

export const kilograms = ({ value, unit }: Amount): Exact =>
  unit === "lb" ? kilogramsPerPound.times(value) : new Exact(value);

export const pounds = (kg: Exact): Exact => kg.div(kilogramsPerPound);

export const plain = (value: Exact): string => value.toFixed();

/** Two decimals, or three significant digits of what is smaller than one: "15.24", "0.103". */
export const shown = (value: Exact): string =>
  plain(value.abs().gte(1) ? value.toDecimalPlaces(2) : value.toSignificantDigits(3));

/** How far a is from b in percent, with its sign and one decimal: "+10.9", "-7.6", "0". */
export function percentFrom(a: Exact, b: Exact): string {
  const percent = a.minus(b).div(b).times(100).toDecimalPlaces(1);
  return percent.gt(0) ? `+${plain(percent)}` : plain(percent.isZero() ? percent.abs() : percent);
}

/** "13.75 mg/kg", as a clinician writes it. */
export const told = ({ value, unit }: Amount): string => `${value} ${unit}`;
