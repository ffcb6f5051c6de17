import { note } from "./kind.js";

/** How easily the page and the clinician's own words are read. section: the title the sentence stands under. */
export const readingKinds = {
  "page-hard": note<{ language: string; measure: string; score: string; limit: string }>(),
  "reading-unknown": note<{ language: string; known: readonly string[] }>(),
  "sentence-long": note<{ sentence: string; section: string; words: number; most: number }>(),
  "sentence-hard": note<{ sentence: string; section: string; measure: string; score: string; limit: string }>(),
  "sentence-passive": note<{ sentence: string; section: string; passive: string }>(),
  "word-hard": note<{ given: string; section: string; plain: string }>(),
};
