import { type CourseModel, decisionOf, middle } from "./course.js";
import { type Cut, type SlotDays, slotName, slotsOf } from "./schedule/slots.js";
import type { Solved } from "./solve.js";

/** A slot over all scenarios: every day it may fall on, the day to aim for, and whether it is in all of them. */
export type Row = SlotDays & {
  ideal: number;
  /** The day it is listed by: its ideal day, or that of a slot of its item that comes before it, if later. */
  listed: number;
  kind: string;
  care: number;
  /** The kind of the decision it waits for. */
  dependsOn: string | null;
  /** The kind of the decision without which it is in all of them, however the others go. */
  unless: string | null;
};

/**
 * The rows of a course in the order of their days, those of one item in their own order. On one day they stand as their items
 * do, whatever their numbers: a trip keeps its name on the next paper, when some of its visits have been.
 */
export function rowsOf(model: CourseModel, solved: readonly Solved[], cut: Cut): Row[] {
  const perScenario = solved.map(({ graph }) => slotsOf(graph, cut));
  const slots = new Map<string, SlotDays>();
  for (const scenario of perScenario)
    for (const [name, slot] of scenario) {
      const known = slots.get(name);
      if (!known) slots.set(name, { ...slot, days: new Set(slot.days) });
      else for (const day of slot.days) known.days.add(day);
    }
  const aims = aimsOf(solved, cut);
  /** The day last aimed at for each item: what comes after is aimed at a later day where it can be. */
  const reached = new Map<number, number>();
  // Those of a stretch are met in the order of their numbers.
  const ordered = [...slots].sort(([, a], [, b]) => a.stretch - b.stretch);
  const rows = ordered.map(([name, slot]): Row => {
    const aim = aims.get(name);
    const ideal = aim?.day ?? nearestToMiddle(slot.days, reached.get(slot.item) ?? 0);
    const listed = Math.max(ideal, reached.get(slot.item) ?? 0);
    reached.set(slot.item, listed);
    const sureIn = perScenario.map((scenario) => scenario.get(name)?.always ?? false);
    const always = sureIn.every((sure) => sure);
    const unless = always ? null : sparing(model, solved, slot.item, sureIn);
    return { ...slot, phase: aim?.phase ?? slot.phase, always, ideal, listed, unless, ...whatFor(model, slot) };
  });
  return rows.sort((a, b) => a.listed - b.listed || a.item - b.item);
}

/** The kind of the decision that alone can spare the owner a visit of a run, for it ends the run: without it the visit is sure. */
function sparing(model: CourseModel, solved: readonly Solved[], item: number, sureIn: readonly boolean[]) {
  const phases = model.runs[item - model.onces.length]?.phases ?? [];
  const enders = phases.flatMap(({ until }) => until.onces);
  const kindOf = (index: number) => decisionOf(model, index)?.kind.value.id ?? null;
  const isSureWithout = (kind: string): boolean => {
    const taken = enders.filter((index) => kindOf(index) === kind);
    const left = sureIn.filter((_, i) => !taken.some((index) => solved[i]?.scenario.happens[index]));
    return left.length > 0 && left.every((sure) => sure);
  };
  return enders.flatMap((index) => kindOf(index) ?? []).find(isSureWithout) ?? null;
}

function whatFor(model: CourseModel, { item, phase }: SlotDays) {
  const dependsOn = decisionOf(model, item)?.kind.value.id ?? null;
  const once = model.onces[item];
  if (once) return { kind: once.kind.value.id, care: once.care, dependsOn };
  const run = model.runs[item - model.onces.length];
  const kind = run?.kind.id ?? "";
  return { kind, care: run?.care ?? 0, dependsOn: run?.phases[phase]?.maybe ? kind : dependsOn };
}

/** The day and phase of each slot in the likeliest course, else in the likeliest with as many decisions taken as may be. */
function aimsOf(solved: readonly Solved[], cut: Cut): Map<string, { day: number; phase: number }> {
  const mostTaken = solved.toSorted(({ scenario: a }, { scenario: b }) => b.taken - a.taken);
  const aims = new Map<string, { day: number; phase: number }>();
  for (const { best } of [solved, mostTaken].flatMap(([first]) => first ?? [])) {
    const counts = new Map<string, number>();
    for (const { day, done } of best)
      for (const { item, phase } of done) {
        const stretch = item < cut.singles ? 0 : cut.stretch(day);
        const number = (counts.get(`${item}:${stretch}`) ?? 0) + 1;
        counts.set(`${item}:${stretch}`, number);
        const name = slotName({ item, stretch, number });
        if (!aims.has(name)) aims.set(name, { day, phase });
      }
  }
  return aims;
}

/** Of the days a slot may fall on after another, the one nearest the middle of them all, the earlier of two. */
function nearestToMiddle(days: ReadonlySet<number>, after: number): number {
  const sorted = [...days].sort((a, b) => a - b);
  const [from = 0, to = from] = [sorted[0], sorted.at(-1)];
  const centre = middle({ from, to });
  return sorted
    .filter((day) => day > after)
    .reduce((best, day) => (Math.abs(day - centre) < Math.abs(best - centre) ? day : best), to);
}
