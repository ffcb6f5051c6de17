import type { Span } from "../language/line.js";
import type { VisitDays } from "./run-outlook.js";

/** Each weighs more than all that could come of the next, and of stretched gaps: exact in a double. */
const prices = { oneThatHasDays: 1e14, visit: 1e12, halfDay: 1e6 };

/**
 * What it costs to have a single visit outside its window, so that as few as may be are moved, and those by as few days:
 * rather one whose window has no day at all, and rather to a later day than to an earlier one as near.
 */
export function movedPrice({ from, to }: Span, day: number, days: VisitDays | undefined): number {
  if (from <= day && day <= to) return 0;
  const halfDays = day > to ? 2 * (day - to) : 2 * (from - day) + 1;
  const hasDays = days && days.nextUsable(from) <= to;
  return (hasDays ? prices.oneThatHasDays : prices.visit) + halfDays * prices.halfDay;
}
