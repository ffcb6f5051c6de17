import type { Plan } from "#plan/plan.js";
import type { VisitKind } from "#tables/visits.js";
import { cursorOver } from "./language/cursor.js";
import { takeKind } from "./language/kinds.js";

const nowhere = { file: "plan", line: 1, column: 1, length: 1 };

/** What a visit was for, by the words a course line would use ("change"); null for words that name no kind. */
export const kindNamed = (words: string, kinds: readonly VisitKind[]): VisitKind | null =>
  takeKind(cursorOver(words, nowhere), kinds)?.value ?? null;

/** On how many visits each kind took place, by its id; two wounds that were changed on one visit are one. */
export function doneCounts(done: Plan["done"], kinds: readonly VisitKind[]): [kind: string, count: number][] {
  const counts = new Map<string, number>();
  for (const { visit } of done)
    for (const kind of new Set(visit.flatMap((words) => kindNamed(words, kinds)?.id ?? [])))
      counts.set(kind, (counts.get(kind) ?? 0) + 1);
  return [...counts];
}
