import type { Choices, Facts, Plan } from "#index.js";

/**
 * The event a collar waits for, of the visits this course has; null where it has none that ends a collar. firm: only such as
 * it must not come off before.
 */
export function usualUntil({ course }: Facts, { until }: Choices, firm: boolean): string | null {
  const kinds = course.purposes.map(({ kind }) => kind);
  const some = until.filter(({ tooEarlyBefore }) => tooEarlyBefore === firm);
  // Sutures and drains first: a bandage comes off before them.
  const later = some.sort((a, b) => kinds.findLastIndex(within(b)) - kinds.findLastIndex(within(a)));
  return later.find(({ visits }) => visits.some((kind) => kinds.includes(kind)))?.event ?? null;
}

const within =
  ({ visits }: Choices["until"][number]) =>
  (kind: string) =>
    visits.includes(kind);

/**
 * What of the price list this plan is likely to need: what is charged for its visits ("if done" for those that only may come),
 * for its medicines and for its collar. The clinician adds what was done today.
 */
export function usualItems({ clinic: { prices } }: Plan, facts: Facts, { visits: kinds }: Choices): string[] {
  const { course, medicines, collar } = facts;
  const certain = new Set(
    course.visits
      .filter(({ certainty }) => certainty !== "possible")
      .flatMap(({ purposes }) => purposes.map(({ kind }) => kind)),
  );
  const planned = course.purposes.map(({ kind }) => kind);
  return prices.flatMap(({ item, visit, per }) => {
    const kind = visit && kinds.find(({ id, words }) => words.includes(visit) || id === visit.replaceAll(" ", "-"))?.id;
    if (kind) return planned.includes(kind) ? [certain.has(kind) ? item : `${item} if done`] : [];
    const dispensed = medicines.some(({ name, strength }) => item === `${name} ${strength?.value} ${strength?.unit}`);
    if (per === "unit") return dispensed ? [item] : [];
    return collar && item === `${collar.kind.replaceAll("-", " ")} collar` ? [item] : [];
  });
}
