import { anchorOf, type CourseModel, middle, type Phase } from "./course.js";
import type { Span } from "./language/line.js";

/** A phase whose length the wound has told. days count from the day it starts, day from discharge. */
export type SetPhase = {
  /** Its place in the run as written. */
  index: number;
  gap: Span;
  first: Span | null;
  /** The single visit that first counts from, else discharge. */
  firstAfter: number | null;
  days: number | null;
  day: number | null;
  times: number | null;
  /** The single visits that end it, where they happen. */
  until: number[];
};

/** One way the wound and the decisions may go: which single visits happen, how long each phase is. */
export type Scenario = {
  happens: boolean[];
  runs: SetPhase[][];
  /** How far the lengths are from the middle of their ranges, and how many decisions were taken. */
  far: number;
  taken: number;
};

/** Most scenarios that are looked at; a course with more is too open to promise anything. */
const mostScenarios = 2000;

type Choice = { options: number[]; likely: number; decision: boolean };

/** Every scenario of a course, or null where there are more than mostScenarios. */
export function scenariosOf(model: CourseModel): Scenario[] | null {
  const { onces, runs } = model;
  const phases = runs.flatMap((run) => run.phases);
  const decisions = [...onces, ...phases].map(
    ({ maybe }): Choice => ({ options: maybe ? [0, 1] : [1], likely: maybe ? 0 : 1, decision: maybe }),
  );
  const lengths = phases.map(({ limit }): Choice => {
    const span = limit?.span.value ?? { from: 0, to: 0 };
    const options = Array.from({ length: span.to - span.from + 1 }, (_, i) => span.from + i);
    return { options, likely: middle(span), decision: false };
  });
  const choices = [...decisions, ...lengths];
  if (choices.reduce((all, { options }) => all * options.length, 1) > mostScenarios) return null;
  return product(choices.map(({ options }) => options)).map((chosen) => settle(model, choices, chosen));
}

const product = (lists: number[][]): number[][] =>
  lists.reduce<number[][]>((all, list) => all.flatMap((head) => list.map((item) => [...head, item])), [[]]);

function settle(model: CourseModel, choices: readonly Choice[], chosen: readonly number[]): Scenario {
  const { onces, runs } = model;
  const phases = runs.flatMap((run) => run.phases);
  const number = new Map(phases.map((phase, i) => [phase, i]));
  const isTaken = (phase: Phase): boolean => chosen[onces.length + (number.get(phase) ?? 0)] === 1;
  const comes = (item: number): boolean =>
    item < onces.length ? chosen[item] === 1 : (runs[item - onces.length]?.phases.some(isTaken) ?? false);
  const canHappen = (item: number | null): boolean =>
    item === null || (comes(item) && canHappen(anchorOf(model, item)));
  return {
    happens: onces.map((_, index) => canHappen(index)),
    runs: runs.map((run, r) => {
      if (!canHappen(onces.length + r)) return [];
      return run.phases.flatMap((phase, index) => {
        const length = chosen[onces.length + phases.length + (number.get(phase) ?? 0)] ?? 0;
        return isTaken(phase) ? [setPhase(phase, index, length)] : [];
      });
    }),
    far: choices.reduce(
      (sum, { likely, decision }, i) => sum + (decision ? 0 : Math.abs((chosen[i] ?? 0) - likely)),
      0,
    ),
    taken: choices.filter(({ decision }, i) => decision && chosen[i] === 1).length,
  };
}

function setPhase({ gap, first, limit, until }: Phase, index: number, length: number): SetPhase {
  const only = (kind: string) => (limit?.kind === kind ? length : null);
  return {
    index,
    gap: gap.value,
    first: first?.span.value ?? null,
    firstAfter: first?.after ?? null,
    days: only("days"),
    day: only("day"),
    times: only("times"),
    until: until.onces,
  };
}
