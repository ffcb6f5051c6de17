import type { Place } from "#problems/place.js";
import type { VisitKind } from "#tables/visits.js";
import type { Slot } from "../calendar/opening.js";
import type { Said, Span } from "./language/line.js";

/**
 * Visits are counted together: an item is a single visit's index, or the number of single visits plus a run's index.
 * A visit that happens once falls on a day after discharge, or so many days after the item `after`: after the last visit
 * where that is a run.
 */
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
  slot: Slot;
};

/**
 * One line of a run. It ends with its limit, or on the day before the first of some single visits. Its first visit falls
 * in a window after discharge, or after the single visit `first.after`.
 */
export type Phase = {
  at: Place;
  kind: Said<VisitKind>;
  maybe: boolean;
  gap: Said<Span>;
  first: { span: Said<Span>; after: number | null } | null;
  limit: { kind: "days" | "day" | "times"; span: Said<Span> } | null;
  /** at: the words that say so, or the gap's where it goes without saying. */
  until: { at: Place; onces: number[] };
  slot: Slot;
};

/** A visit that repeats: its phases follow each other, the gap of each counting from the visit before. */
export type Run = { care: number; kind: VisitKind; phases: Phase[] };

/** All visits of a plan as the course lines say, the lines held against each other. */
export type CourseModel = { onces: Once[]; runs: Run[] };

/** What an item counts its days from; null for the day of discharge. */
export const anchorOf = ({ onces, runs }: CourseModel, item: number): number | null =>
  (onces[item] ? onces[item].after : runs[item - onces.length]?.phases[0]?.first?.after) ?? null;

/** What an item waits for to be decided: itself where it is a maybe, for a run every line of it, or what it comes after. */
export function decisionOf(model: CourseModel, item: number | null): Once | Phase | null {
  if (item === null) return null;
  const lines = [model.onces[item] ?? model.runs[item - model.onces.length]?.phases ?? []].flat();
  const [first = null] = lines;
  return lines.every(({ maybe }) => maybe) ? first : decisionOf(model, anchorOf(model, item));
}

/** The middle of a range, half up: what is likely, and what is aimed for, where nothing else is said. */
export const middle = ({ from, to }: Span): number => Math.ceil((from + to) / 2);
