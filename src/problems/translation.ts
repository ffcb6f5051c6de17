import { stop } from "./kind.js";

type Sets = { key: string; wanted: readonly string[]; found: readonly string[] };

/** A language against the source it was translated from. A page is built all the same; the language is not whole. */
export const translationKinds = {
  "translation-missing": stop<{ key: string }>(),
  "translation-extra": stop<{ key: string }>(),
  "translation-plurals": stop<Sets>(),
  "translation-contexts": stop<Sets>(),
  "translation-values": stop<Sets>(),
  "translation-figures": stop<Sets>(),
  "translation-markup": stop<{ key: string; wanted: number; found: number }>(),
  "translation-untranslated": stop<{ key: string; words: readonly string[] }>(),
  "translation-long": stop<{ key: string }>(),
};
