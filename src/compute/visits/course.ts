import type { Place } from "#problems/place.js";
import type { VisitKind } from "#tables/visits.js";
import type { Said, Span } from "./language/line.js";

/** A visit that happens once: on a day after discharge, or so many days after the single visit `after` (its index). */
export type Once = {
  care: number;
  at: Place;
  kind: Said<VisitKind>;
  maybe: boolean;
  /** A decision that names no day: it may fall on any day of its care. */
  open: boolean;
  /** The words that say when. */
  when: Said<Span>;
  after: number | null;
};

/** One line of a run. It ends with its limit, or on the day before the single visit `until` (its index). */
export type Phase = {
  at: Place;
  kind: Said<VisitKind>;
  maybe: boolean;
  gap: Said<Span>;
  first: Said<Span> | null;
  limit: { kind: "days" | "day" | "times"; span: Said<Span> } | null;
  until: Said<number> | null;
};

/** A visit that repeats: its phases follow each other, the gap of each counting from the visit before. */
export type Run = { care: number; kind: VisitKind; phases: Phase[] };

/** All visits of a plan as the course lines say, the lines held against each other. */
export type CourseModel = { onces: Once[]; runs: Run[] };

/** The single visit whose happening a single visit waits for: itself where it is a maybe, or the one it comes after. */
export function decisionOf(onces: readonly Once[], index: number | null): Once | null {
  const once = index === null ? undefined : onces[index];
  if (!once) return null;
  return once.maybe ? once : decisionOf(onces, once.after);
}

/** The middle of a range, half up: what is likely, and what is aimed for, where nothing else is said. */
export const middle = ({ from, to }: Span): number => Math.ceil((from + to) / 2);
