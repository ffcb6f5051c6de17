import type { Place } from "#problems/place.js";
import type { VisitKind } from "#tables/visits.js";
import type { Slot } from "../../calendar/opening.js";

/** Whole days, first and last. As a window they count from the day of discharge, which is day 0. */
export type Span = { from: number; to: number };

/** Words of a line that name something: what they say and where they stand. */
export type Said<T> = { value: T; text: string; at: Place };

/** The visit that days are counted from; last: of one that repeats, its last. */
export type Anchor = Said<VisitKind> & { last: boolean };

/** When a visit is due: between two days after discharge, or after another visit. */
export type When = { span: Said<Span>; after: Anchor | null };

/** What ends a repeating visit: a number of days, a day, a number of visits; or what happens first. */
export type End = {
  limit: { kind: "days" | "day" | "times"; span: Said<Span> } | null;
  until: Said<VisitKind | "bandaged"> | null;
};

/** One line of a course, understood word by word but not yet held against the other lines. */
export type Line = {
  /** Which of the plan's cares it belongs to. */
  care: number;
  at: Place;
  maybe: boolean;
  kind: Said<VisitKind>;
  slot: Slot;
} & ({ repeats: false; when: When | null } | { repeats: true; gap: Said<Span>; first: When | null; end: End });

export type OnceLine = Extract<Line, { repeats: false }>;
export type RepeatLine = Extract<Line, { repeats: true }>;
