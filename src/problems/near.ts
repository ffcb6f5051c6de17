import { distance } from "fastest-levenshtein";

/** The known names most like what was written, nearest first, at most three; none when nothing is alike. */
export function nearest(given: string, known: readonly string[]): string[] {
  const wanted = given.toLowerCase();
  return known
    .map((name) => ({ name, far: distance(wanted, name.toLowerCase()) }))
    .filter(({ name, far }) => far <= Math.max(2, Math.floor(Math.max(name.length, wanted.length) / 3)))
    .sort((a, b) => a.far - b.far || (a.name < b.name ? -1 : 1))
    .slice(0, 3)
    .map(({ name }) => name);
}
