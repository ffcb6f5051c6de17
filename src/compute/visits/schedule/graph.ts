import type { RunState, Stretch, VisitDays } from "./run-outlook.js";

/** One purpose done on a day. item: a single visit's index, or the number of single visits plus the run's index. */
export type Done = { item: number; phase: number };

/** From one evening to the next: what is done that day, what it costs, how far it is off the ideal days. */
export type Step = {
  day: number;
  done: readonly Done[];
  stretches: readonly Stretch[];
  price: number;
  off: number;
  to: Node;
};

/** All ways of having come this far that have the same future. over: nothing more needs to happen. */
export type Node = { singles: number[]; runs: RunState[]; over: boolean; steps: Step[] };

/** Schedules as ways through days: layer 0 holds the evening of discharge, layer n the evenings n days later. */
export type DayGraph = { layers: Node[][] };

/** What one item, or all of them, can do on one day, and how it stands that evening. price: of being out of a window. */
export type Part<T> = { state: T; done: readonly Done[]; stretches: readonly Stretch[]; off: number; price: number };
/** The part of one that does nothing that day. */
export const idle: Omit<Part<never>, "state"> = { done: [], stretches: [], off: 0, price: 0 };

/** A trip costs nothing at our clinic, something at the partner's; booked: somebody must come. */
export type DayUse = { price: number; booked: boolean };

/** The days as a schedule sees them. */
export type Days = {
  use: (day: number) => DayUse;
  /** By single visit, and by run and phase as written. */
  onces: readonly VisitDays[];
  runs: readonly (readonly VisitDays[])[];
  /** All of it can begin at one time of that day, and so on one trip. */
  together: (day: number, done: readonly Done[]) => boolean;
  lastBooked: number;
  /** Single visits whose day is agreed, by index. */
  fixed: ReadonlyMap<number, number>;
  /** How many days out of its window another may be, at a price. */
  slack: number;
};
