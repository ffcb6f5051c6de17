import { stop } from "./kind.js";

export const renderKinds = {
  "glyph-missing": stop<{ character: string; codepoint: string }>(),
  "node-undrawable": stop<{ node: string }>(),
  "figure-unreadable": stop<{ figure: string; path: string }>(),
  "taller-than-page": stop<{ part: string }>(),
};
