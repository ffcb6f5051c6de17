import type { Outcome } from "#problems/problem.js";

type Values<O extends Record<string, Outcome<unknown>>> = { [K in keyof O]: NonNullable<O[K]["value"]> };

/** Several outcomes as one: every value if all are there, and every problem in any case. */
export function together<O extends Record<string, Outcome<unknown>>>(parts: O): Outcome<Values<O>> {
  const values = Object.entries(parts).map(([name, { value }]) => [name, value]);
  return {
    value: values.some(([, value]) => value === null) ? null : (Object.fromEntries(values) as Values<O>),
    problems: Object.values(parts).flatMap(({ problems }) => problems),
  };
}
