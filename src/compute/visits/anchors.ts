import { type Problem, problem } from "#problems/problem.js";
import type { VisitKind } from "#tables/visits.js";
import type { Anchor, End, Line, OnceLine, RepeatLine, Said, Span, When } from "./language/line.js";

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
export function endersOf(among: Sorted, line: RepeatLine): number[] {
  if (!line.kind.value.ofOpenWound) return [];
  const [begins = line] = among.runs.find((run) => run.includes(line)) ?? [];
  return among.single.flatMap((shuts, index) => {
    const ends = shuts.care === line.care && shuts.kind.value.endsBandage;
    return ends && !beginsAfter(among, begins, shuts) && !waitsFor(among, shuts, begins) ? [index] : [];
  });
}

/** It counts its days from the last visit of a run, itself or by what it waits for, so that the run is over by then. */
function waitsFor(among: Sorted, line: Line, run: RepeatLine, links = 0): boolean {
  const after = line.repeats ? line.first?.after : line.when?.after;
  if (!after || links > among.lines.length) return false;
  const [item = -1] = findAnchor(among, line, after).items;
  const anchor = among.single[item] ?? among.runs[item - among.single.length]?.[0];
  return anchor !== undefined && (anchor === run || waitsFor(among, anchor, run, links + 1));
}

/** It begins when the wound has been shut, and so is not ended by it: counted from discharge, or from a visit both wait for. */
function beginsAfter(among: Sorted, run: RepeatLine, shuts: OnceLine): boolean {
  if (run.first && daysFrom(among, run, run.first, shuts)) return true;
  return [null, ...among.single].some((base) => {
    const [begins, shut] = [
      run.first && daysFrom(among, run, run.first, base),
      daysFrom(among, shuts, shuts.when, base),
    ];
    return begins && shut && begins.from > shut.to;
  });
}

/** On which days from another visit on (null: from discharge) something is due; null where it does not count from that one. */
function daysFrom(among: Sorted, line: Line, when: When | null, base: OnceLine | null, links = 0): Span | null {
  if (!when || links > among.single.length) return null;
  const { span, after } = when;
  if (!after) return base === null ? span.value : null;
  const anchor = among.single[findAnchor(among, line, after).items[0] ?? -1];
  if (!anchor) return null;
  if (anchor === base) return span.value;
  const before = daysFrom(among, anchor, anchor.when, base, links + 1);
  return before && { from: before.from + span.value.from, to: before.to + span.value.to };
}
