import bidiFactory, { type Bidi } from "bidi-js";

/** Which way a page runs. */
export type Direction = "ltr" | "rtl";

/** The package is CommonJS and its types say otherwise: its default export is the function. */
const bidi = (bidiFactory as unknown as () => Bidi)();

/** Marks that say which way words run; they are obeyed and never drawn. */
export const directionMarks = /[\u061c\u200e\u200f\u2066-\u2069]/g;
const rightToLeft = /\p{Script=Arabic}|\p{Script=Hebrew}|[\u200f\u2067\u2068]/u;

/**
 * The embedding level of each character of a paragraph (UAX #9, by bidi-js); null where all of it runs left to right, so
 * that most pages pay nothing.
 */
export const levelsOf = (text: string, direction: Direction): Uint8Array | null =>
  direction === "ltr" && !rightToLeft.test(text) ? null : bidi.getEmbeddingLevels(text, direction).levels;

/** Stretches of one level, in the order they are read. */
export function stretchesOf(text: string, levels: Uint8Array | null, from = 0): { text: string; level: number }[] {
  if (!levels) return [{ text, level: 0 }];
  const found: { text: string; level: number }[] = [];
  for (let index = 0; index < text.length; index++) {
    const level = levels[from + index] ?? 0;
    const last = found.at(-1);
    if (last?.level === level) last.text += text[index];
    else found.push({ text: text[index] ?? "", level });
  }
  return found;
}

/**
 * The order in which stretches stand from the edge where lines begin (rule L2: from the highest level down, what has at
 * least that level is reversed). In a page from right to left that edge is the right one.
 */
export function fromStart(levels: readonly number[], direction: Direction): number[] {
  const order = levels.map((_, index) => index);
  for (let level = Math.max(0, ...levels); level > 0; level--)
    for (let start = 0; start < order.length; start++) {
      let end = start;
      while (end < order.length && (levels[order[end] ?? 0] ?? 0) >= level) end++;
      if (end - start > 1) order.splice(start, end - start, ...order.slice(start, end).reverse());
      start = Math.max(start, end);
    }
  return direction === "rtl" ? order.reverse() : order;
}

/** Brackets as they look in words that run from right to left. */
export const mirrored = (text: string): string =>
  [...text].map((character) => bidi.getMirroredCharacter(character) ?? character).join("");
