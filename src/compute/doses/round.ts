import { Exact } from "./exact.js";

/** The nearest whole number of steps; what lies in the middle goes down. */
export function toStep(amount: Exact, step: Exact): Exact {
  return amount.div(step).toDecimalPlaces(0, Exact.ROUND_HALF_DOWN).times(step);
}

export const isStep = (amount: Exact, step: Exact): boolean => amount.mod(step).isZero();
