import { distance } from "fastest-levenshtein";

type Near = { name: string; far: number };

/**
 * The known names most like what was written, nearest first, at most three; none when nothing is alike. Where no whole name
 * is, those with a part like it: "abcess" is a part of "abscess-home-care".
 */
export function nearest(given: string, known: readonly string[]): string[] {
  const wanted = given.toLowerCase();
  const whole = closest(known, (name) => {
    const far = distance(wanted, name.toLowerCase());
    return far <= Math.max(2, Math.floor(Math.max(name.length, wanted.length) / 3)) ? far : null;
  });
  return whole.length > 0 ? whole : closest(known, (name) => farFromPart(wanted, name.toLowerCase()));
}

function closest(known: readonly string[], farFrom: (name: string) => number | null): string[] {
  return known
    .flatMap((name): Near[] => {
      const far = farFrom(name);
      return far === null ? [] : [{ name, far }];
    })
    .sort((a, b) => a.far - b.far || (a.name < b.name ? -1 : 1))
    .slice(0, 3)
    .map(({ name }) => name);
}

/** How far it is from as many words of a name as it has itself; null from what is too short to be a part, or not alike. */
function farFromPart(wanted: string, name: string): number | null {
  if (wanted.length < 4) return null;
  const count = wordsOf(wanted).length;
  const words = wordsOf(name);
  const parts = words
    .slice(0, Math.max(0, words.length - count + 1))
    .map((_, i) => words.slice(i, i + count).join(" "));
  const far = Math.min(...parts.map((part) => distance(wordsOf(wanted).join(" "), part)));
  return far <= Math.floor(wanted.length / 4) ? far : null;
}

const wordsOf = (text: string) => text.split(/[^\p{L}\p{N}]+/u).filter(Boolean);
