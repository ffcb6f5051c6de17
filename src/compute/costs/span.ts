import type { Span } from "../facts.js";
import type { End } from "./slots.js";

/** Works out all three amounts. */
export const spanOf = (amount: (end: End) => number): Span => ({
  low: amount("low"),
  likely: amount("likely"),
  high: amount("high"),
});

/** Does the same to all three amounts. */
export const mapSpan = (span: Span, change: (amount: number) => number): Span => spanOf((end) => change(span[end]));
