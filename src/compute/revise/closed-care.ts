import type { Plan } from "#plan/plan.js";
import { placeOf } from "#problems/place.js";
import { type Outcome, problem } from "#problems/problem.js";
import type { Topic } from "#tables/topic.js";
import type { Care } from "../facts.js";
import type { Line } from "../visits/language/line.js";

const closure = "closure";

/**
 * The lines of care, by index, of the one wound that a visit closed: those that plan a closure, else those of an open wound,
 * and what else is for the same place. None where the plan has no such wound. due: whether a line's first day has come.
 * Problems: "revise-which-closed".
 */
export function closedCare(
  plan: Plan,
  care: readonly Care[],
  lines: readonly Line[],
  topics: readonly Topic[],
  due: (line: Line) => boolean,
): Outcome<number[]> {
  const all = care.map((_, i) => i);
  const planned = (which: (line: Line) => boolean) =>
    all.filter((i) => lines.some((line) => line.care === i && line.kind.value.id === closure && which(line)));
  const open = all.filter((i) => onceClosed(topics, care[i]) !== null);
  const wounds = [planned(due), planned(() => true), open].find((some) => some.length > 0) ?? [];
  const closed = (i: number) => all.filter((other) => other === i || isAtOnePlace(care[i], care[other]));
  const [first = []] = wounds.map(closed);
  if (wounds.every((i) => first.includes(i))) return { value: first, problems: [] };
  const sites = wounds.flatMap((i) => plan.care[i]?.site ?? plan.care[i]?.topic ?? []);
  return { value: null, problems: [problem("revise-which-closed", placeOf(plan.places, "care"), { sites })] };
}

/** The topic that takes the place of a care's once its wound is closed; null where there is none. */
export const onceClosed = (topics: readonly Topic[], care: Care | undefined): string | null =>
  topics.find(({ id }) => id === care?.topic)?.onceClosed ?? null;

const isAtOnePlace = (one: Care | undefined, other: Care | undefined): boolean =>
  one !== undefined && one.site !== null && one.site === other?.site && one.side === other.side;
