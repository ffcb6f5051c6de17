import {
  compute,
  type Facts,
  type House,
  type Outcome,
  type Plan,
  type Problem,
  readPlan,
  type Source,
} from "#index.js";

/** What a plan is tried with: all that ships, the clinic's own files, and the day. today: "2026-03-04". */
export type Ground = { house: House; clinic?: Source | undefined; prices?: Source | undefined; today: string };
export type Tried = Outcome<{ plan: Plan; facts: Facts | null }>;

/** What follows from a plan's text as it stands: the real stages, on a plan that may not be whole yet. */
export function tryPlan(text: string, file: string, { house, clinic, prices, today }: Ground): Tried {
  const plan = { file, bytes: new TextEncoder().encode(text) };
  const read = readPlan({ plan, clinic, prices }, { today });
  if (!read.value) return { value: null, problems: read.problems };
  const facts = compute(read.value, house);
  return { value: { plan: read.value, facts: facts.value }, problems: [...read.problems, ...facts.problems] };
}

/** The problems that an answer brings: those of after that were not there before, wherever they stand in the file. */
export function brought(before: readonly Problem[], after: readonly Problem[]): Problem[] {
  const known = new Set(before.map(keyOf));
  return after.filter((problem) => !known.has(keyOf(problem)));
}

const keyOf = ({ code, values }: Problem): string => JSON.stringify([code, values]);
