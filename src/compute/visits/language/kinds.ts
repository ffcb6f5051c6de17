import { nearest } from "#problems/near.js";
import { problem } from "#problems/problem.js";
import type { VisitKind } from "#tables/visits.js";
import type { Cursor } from "./cursor.js";
import type { Said } from "./line.js";

const plain = (words: string) => words.replaceAll("-", " ");
const longestName = 4;

/** The longest run of words here that names a kind of visit; null and no step taken where there is none. */
export function takeKind(cursor: Cursor, kinds: readonly VisitKind[]): Said<VisitKind> | null {
  const start = cursor.position();
  for (let length = longestName; length > 0; length--) {
    const words = Array.from({ length }, (_, i) => cursor.peek(i)?.text ?? "").join(" ");
    const kind = kinds.find(({ id, words: known }) => [id, ...known].some((name) => plain(name) === plain(words)));
    if (!kind) continue;
    cursor.moveTo(start + length);
    return cursor.said(start, kind);
  }
  return null;
}

/** Words that cannot belong to the name of a visit, so that what stands before them was meant as one. */
const after = new Set([
  "every",
  "day",
  "days",
  "on",
  "in",
  "for",
  "until",
  "while",
  "first",
  "tomorrow",
  "between",
  "-",
]);

/**
 * Tells that what stands here is no kind of visit we know, pointing at as many words as were meant as its name; or that there is
 * no name, as where a comma has cut a line of a list in two.
 */
export function kindUnknown(cursor: Cursor, kinds: readonly VisitKind[]): never {
  const known = kinds.map(({ words: [name = ""] }) => name);
  if (!cursor.peek()) return cursor.unfinished(known);
  const start = cursor.position();
  let end = start;
  while (cursor.peek(end - start)?.kind === "word" && !after.has(cursor.peek(end - start)?.text ?? "")) end++;
  cursor.moveTo(end);
  const { text: given, at } = cursor.said(start, null);
  const names = kinds.flatMap(({ words }) => words);
  if (after.has(given.toLowerCase())) return cursor.fail(problem("visit-name-missing", at, { given }));
  return cursor.fail(problem("visit-kind-unknown", at, { given, near: nearest(given, names), known }));
}
