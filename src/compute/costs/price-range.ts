import type { Clinic } from "#plan/plan.js";
import type { Span } from "../facts.js";
import { exact, roundHalfUp, toMinor } from "./money.js";

/** Of a range the middle is likely, unless one is named (our rule; common practice, no source). In minor units. */
export function rangeOf(price: Clinic["prices"][number]["price"], digits: number): Span {
  const [low, high] = [toMinor(price.low, digits), toMinor(price.high, digits)];
  const middle = () => roundHalfUp(exact(low).plus(high).div(2));
  return { low, likely: price.likely === null ? middle() : toMinor(price.likely, digits), high };
}
