import { distance } from "fastest-levenshtein";
import type { MedicineRow } from "#tables/medicines.js";
import { simple } from "#tables/simple.js";
import { namedIn } from "./find.js";

type Likeness = { row: MedicineRow; name: string; far: number };

/**
 * Names of the table that what was written may be a slip of, the nearest first, one of a row and three at most. What is
 * exactly known is no slip of another name, but may be the beginning of one: "amoxicillin clavulanete".
 */
export function misspelt(text: string, table: readonly MedicineRow[]): string[] {
  const words = simple(text).split(" ");
  const found = namedIn(text, table);
  const known = coveredBy(words, found);
  // A space in the wrong place makes one word more.
  const mostWords = 1 + Math.max(...table.flatMap(({ names }) => names.map((name) => name.split(" ").length)));
  const parts = words.flatMap((_, start) =>
    words
      .slice(start, start + mostWords)
      .map((_, more) => words.slice(start, start + more + 1))
      .filter((part) => part.some((_, i) => !known[start + i])),
  );
  const likenesses = table
    .filter((row) => !found.includes(row))
    .flatMap((row) => likest(row, parts) ?? [])
    .sort((a, b) => a.far - b.far || (a.name < b.name ? -1 : 1));
  return likenesses.slice(0, 3).map(({ name }) => name);
}

/** Which words belong to a name that was found as it is. */
function coveredBy(words: readonly string[], found: readonly MedicineRow[]): boolean[] {
  const covered = words.map(() => false);
  for (const name of found.flatMap(({ names }) => names)) {
    const { length } = name.split(" ");
    for (let start = 0; start + length <= words.length; start++)
      if (words.slice(start, start + length).join(" ") === name) covered.fill(true, start, start + length);
  }
  return covered;
}

/** The name of a row that a part of what was written is most like; the first of equals, which is the one most used. */
function likest(row: MedicineRow, parts: readonly (readonly string[])[]): Likeness | null {
  let best: Likeness | null = null;
  for (const name of row.names)
    for (const part of parts) {
      const far = farFrom(part, name.split(" "));
      if (far !== null && (best === null || far < best.far)) best = { row, name, far };
    }
  return best;
}

/** How many letters lie between, word by word; null where it is another name. Spaces in the wrong place count for nothing. */
function farFrom(written: readonly string[], name: readonly string[]): number | null {
  if (written.length !== name.length) return written.join("") === name.join("") ? 0 : null;
  let sum = 0;
  for (const [i, word] of name.entries()) {
    const given = written[i] ?? "";
    const far = distance(given, word);
    if (far > allowance(given, word)) return null;
    sum += far;
  }
  return sum;
}

/**
 * Letters that may be wrong in a word. A second one only of long words that begin alike: names of medicines share their
 * endings, and differ where they begin (betamethasone is no slip of dexamethasone).
 */
function allowance(given: string, word: string): number {
  if (word.length < 4) return 0;
  return word.length >= 7 && given[0] === word[0] ? 2 : 1;
}
