import { note, stop } from "./kind.js";

export const renderKinds = {
  "glyph-missing": stop<{ character: string; codepoint: string }>(),
  "node-undrawable": stop<{ node: string }>(),
  "figure-unreadable": stop<{ figure: string; path: string }>(),
  "email-sender-missing": stop<Record<never, never>>(),
  "email-recipient-missing": note<Record<never, never>>(),
  "taller-than-page": stop<{ part: string }>(),
  "page-full": stop<Record<never, never>>(),
};
