import { type Problem, problem } from "#problems/problem.js";
import type { VisitKind } from "#tables/visits.js";
import type { Anchor, End, Line, OnceLine, RepeatLine, Said } from "./language/line.js";

/** The lines of a plan, sorted: single visits, and repeating ones as the runs that follow each other. */
export type Sorted = { lines: readonly Line[]; single: readonly OnceLine[]; runs: readonly RepeatLine[][] };

/** What words of a line name: items (a single visit's index, or their number plus a run's), or why there are none. */
export type Found = { items: number[]; problems: Problem[] };

/** A phase goes on with the run of its kind in its care, unless it says when it begins. */
export function sorted(lines: readonly Line[]): Sorted {
  const single = lines.filter((line): line is OnceLine => !line.repeats);
  const runs: RepeatLine[][] = [];
  for (const line of lines.filter((line): line is RepeatLine => line.repeats)) {
    const before = runs.findLast(([one]) => one?.care === line.care && one.kind.value.id === line.kind.value.id);
    if (before && !line.first) before.push(line);
    else runs.push([line]);
  }
  return { lines, single, runs };
}

/** The item a line counts its days from. */
export function findAnchor(among: Sorted, line: Line, anchor: Anchor): Found {
  const { single, runs } = among;
  const alike = (one: RepeatLine | undefined) => one?.kind.value.id === anchor.value.id;
  const own = runs.findLastIndex(([one]) => alike(one) && one?.care === line.care);
  const run = own >= 0 ? own : runs.findLastIndex(([one]) => alike(one));
  return anchor.last && run >= 0 ? { items: [single.length + run], problems: [] } : findSingle(among, line, anchor);
}

/** The first single visit of a kind, in the line's own care before any other. */
export function findSingle({ lines, single }: Sorted, line: Line, name: Said<VisitKind>): Found {
  const alike = (other: Line) => other !== line && other.kind.value.id === name.value.id;
  const own = single.findIndex((other) => alike(other) && other.care === line.care);
  const index = own >= 0 ? own : single.findIndex(alike);
  if (index >= 0) return { items: [index], problems: [] };
  if (lines.some((other) => other.repeats && other.kind.value.id === name.value.id))
    return { items: [], problems: [problem("anchor-repeats", name.at, { given: name.text })] };
  const known = [...new Set(single.filter((other) => other !== line).map(({ kind }) => kind.text))];
  return { items: [], problems: [problem("anchor-unknown", name.at, { given: name.text, known })] };
}

/** The single visits before which a repeating one ends because its line says so. */
export function findEnd(among: Sorted, line: RepeatLine, until: NonNullable<End["until"]>): Found {
  if (until.value !== "bandaged") return findSingle(among, line, { ...until, value: until.value });
  const enders = among.single.flatMap(({ kind }, index) => (kind.value.endsBandage ? [index] : []));
  const own = enders.filter((index) => among.single[index]?.care === line.care);
  const items = own.length > 0 ? own : enders;
  return { items, problems: items.length > 0 ? [] : [problem("bandage-end-unknown", until.at, {})] };
}

/** The single visits that end a repeating one without a word: where the wound is shut, nobody changes its bandage. */
export function endersOf({ single, runs }: Sorted, line: RepeatLine): number[] {
  if (!line.kind.value.ofOpenWound) return [];
  const [begins = line] = runs.find((run) => run.includes(line)) ?? [];
  return single.flatMap(({ care, kind, when }, index) => {
    const shuts = care === line.care && kind.value.endsBandage;
    return shuts && !beginsAfter(begins, kind.value, when) ? [index] : [];
  });
}

/** It begins when the wound has been shut, and so is not ended by it. */
function beginsAfter({ first }: RepeatLine, kind: VisitKind, when: OnceLine["when"]): boolean {
  if (!first) return false;
  if (first.after) return first.after.value.id === kind.id;
  return when !== null && !when.after && first.span.value.from > when.span.value.to;
}
