import type { Cursor } from "./cursor.js";
import type { Said, Span } from "./line.js";
import { takeDays } from "./spans.js";

/** Set phrases for a gap, in days. */
const phrases: [words: string[], days: Span][] = [
  [["every", "other", "day"], { from: 2, to: 2 }],
  [["every", "day"], { from: 1, to: 1 }],
  [["every", "week"], { from: 7, to: 7 }],
  [["every", "other", "week"], { from: 14, to: 14 }],
  [["daily"], { from: 1, to: 1 }],
  [["weekly"], { from: 7, to: 7 }],
  [["once", "a", "day"], { from: 1, to: 1 }],
  [["once", "a", "week"], { from: 7, to: 7 }],
  [["twice", "a", "week"], { from: 3, to: 4 }],
];

/** The days from one visit of a repeating line to the next: "every 2-3 days", "daily". */
export function takeGap(cursor: Cursor): Said<Span> | null {
  const start = cursor.position();
  const phrase = phrases.find(([words]) => cursor.take(...words));
  if (phrase) return cursor.said(start, phrase[1]);
  if (!cursor.take("every")) return null;
  const days = takeDays(cursor) ?? cursor.lost("day", "other day", "2-3 days", "week");
  return { ...cursor.said(start, days.value) };
}
