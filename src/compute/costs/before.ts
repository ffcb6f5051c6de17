import type { Plan } from "#plan/plan.js";
import type { Before } from "../facts.js";
import { toMinor } from "./money.js";
import { rangeOf } from "./price-range.js";
import { spanOf } from "./span.js";

/**
 * What the days before this paper come to: what was charged is known, and what was not is still the range it was expected in.
 * In minor units.
 */
export function beforeOf(days: NonNullable<Plan["estimate"]>["before"], digits: number): Before {
  const charged = days.reduce((sum, day) => sum + toMinor(day.charged ?? "0", digits), 0);
  const expected = days.flatMap((day) => (day.expected ? rangeOf(day.expected, digits) : []));
  const open = spanOf((end) => expected.reduce((sum, range) => sum + range[end], 0));
  return {
    charged,
    open,
    days: days.flatMap(({ day, expected }) => (expected ? day : [])),
    total: spanOf((end) => charged + open[end]),
  };
}
