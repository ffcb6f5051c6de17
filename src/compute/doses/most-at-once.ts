import { Exact } from "./exact.js";
import type { Form } from "./made-up.js";

/** More than this at a time is more likely a slip of the strength or of the point; common practice, no source. */
const mostAtOnce: Record<string, number> = {
  tablet: 4,
  capsule: 4,
  drop: 8,
  application: 2,
  cm: 4,
  in: 2,
  spray: 6,
  patch: 2,
  unit: 60,
};
const mostMillilitresPerKg = 1;

/** The most of a form that anybody would put into an animal of this weight at one time. */
export const mostOf = ({ kind, unit }: Form, kg: Exact): Exact =>
  kind === "liquid" ? kg.times(mostMillilitresPerKg) : new Exact(mostAtOnce[unit] ?? 1);
