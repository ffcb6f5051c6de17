import type { Outcome } from "#index.js";

/** The next stage, if there is something to hand to it; with the problems of all stages so far. */
export async function follow<A, B>(
  { value, problems }: Outcome<A>,
  next: (value: A) => Outcome<B> | Promise<Outcome<B>>,
): Promise<Outcome<B>> {
  if (value === null) return { value: null, problems };
  const after = await next(value);
  return { value: after.value, problems: [...problems, ...after.problems] };
}
