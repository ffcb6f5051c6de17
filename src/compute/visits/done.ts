import type { Plan } from "#plan/plan.js";
import type { VisitKind } from "#tables/visits.js";
import { cursorOver } from "./language/cursor.js";
import { takeKind } from "./language/kinds.js";

const nowhere = { file: "plan", line: 1, column: 1, length: 1 };

/** What a visit was for, by the words a course line would use ("change"); null for words that name no kind. */
export const kindNamed = (words: string, kinds: readonly VisitKind[]): VisitKind | null =>
  takeKind(cursorOver(words, nowhere), kinds)?.value ?? null;

/** How often each kind of visit took place, by its id. */
export function doneCounts(done: Plan["done"], kinds: readonly VisitKind[]): [kind: string, count: number][] {
  const counts = new Map<string, number>();
  for (const words of done.flatMap(({ visit }) => visit)) {
    const kind = kindNamed(words, kinds);
    if (kind) counts.set(kind.id, (counts.get(kind.id) ?? 0) + 1);
  }
  return [...counts];
}
