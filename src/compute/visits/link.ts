import { type Outcome, type Problem, problem } from "#problems/problem.js";
import { endersOf, type Found, findAnchor, findEnd, findSingle, type Sorted, sorted } from "./anchors.js";
import { lastDay } from "./bounds.js";
import { anchorOf, type CourseModel, decisionOf, type Once, type Phase, type Run } from "./course.js";
import type { Line, OnceLine, RepeatLine, Span } from "./language/line.js";

/** Where a decision without a day of its own stands until the course around it is known. */
const anyDay: Span = { from: 1, to: 1 };

/**
 * Holds the lines of a plan against each other: which visit another waits for, which phase follows which.
 * Problems: "anchor-unknown", "anchor-repeats", "anchor-circle", "bandage-end-unknown", "end-uncertain",
 * "visit-when-missing".
 */
export function link(lines: readonly Line[]): Outcome<CourseModel> {
  const among = sorted(lines);
  const problems: Problem[] = [];
  const keep = ({ items, problems: more }: Found): number[] => {
    problems.push(...more);
    return items;
  };
  const onces = among.single.map((line) => onceOf(among, line, keep));
  const runs = among.runs.flatMap((lines): Run[] => {
    const [first] = lines;
    if (!first) return [];
    return [{ care: first.care, kind: first.kind.value, phases: lines.map((line) => phaseOf(among, line, keep)) }];
  });
  const model = { onces, runs };
  if (problems.length === 0) problems.push(...circles(model));
  // What waits in a circle waits for no decision that could be found.
  if (problems.length === 0) problems.push(...uncertainEnds(model));
  return problems.length > 0 ? { value: null, problems } : openDecisions(model);
}

type Keep = (found: Found) => number[];

function onceOf(among: Sorted, line: OnceLine, keep: Keep): Once {
  const { care, at, maybe, kind, when, slot } = line;
  if (!when && !maybe) keep({ items: [], problems: [problem("visit-when-missing", kind.at, { given: kind.text })] });
  const [after = null] = when?.after ? keep(findAnchor(among, line, when.after)) : [];
  return { care, at, maybe, kind, slot, open: !when, when: when?.span ?? { ...kind, value: anyDay }, after };
}

function phaseOf(among: Sorted, line: RepeatLine, keep: Keep): Phase {
  const { at, kind, maybe, gap, first, end, slot } = line;
  const stated = end.until ? keep(findEnd(among, line, end.until)) : [];
  const onces = [...new Set([...stated, ...endersOf(among, line)])];
  const [after = null] = first?.after ? keep(findSingle(among, line, first.after)) : [];
  return {
    at,
    kind,
    maybe,
    gap,
    first: first && { span: first.span, after },
    limit: end.limit,
    until: { at: end.until?.at ?? gap.at, onces },
    slot,
  };
}

/** Visits that wait for each other, so that none can ever begin. */
function circles(model: CourseModel): Problem[] {
  const { onces, runs } = model;
  const waitsFor = (item: number): number[] => {
    const anchor = anchorOf(model, item);
    const ends = runs[item - onces.length]?.phases.flatMap(({ until }) => until.onces) ?? [];
    return anchor === null ? ends : [anchor, ...ends];
  };
  const reaches = (from: number, wanted: number, seen: Set<number>): boolean =>
    waitsFor(from).some((next) => {
      if (next === wanted) return true;
      if (seen.has(next)) return false;
      seen.add(next);
      return reaches(next, wanted, seen);
    });
  const leadsTo = (from: number, wanted: number) => reaches(from, wanted, new Set());
  const names = [...onces.map(({ kind }) => kind.text), ...runs.map(({ phases }) => phases[0]?.kind.text ?? "")];
  return onces.flatMap(({ when }, item) => {
    const circle = names.filter((_, other) => leadsTo(item, other) && leadsTo(other, item));
    return circle.length > 0 ? [problem("anchor-circle", when.at, { given: circle.join(", ") })] : [];
  });
}

/** A repeating visit that ends only with what may never happen would never end. */
const uncertainEnds = (model: CourseModel): Problem[] =>
  model.runs
    .flatMap(({ phases }) => phases)
    .filter(({ limit, until }) => !limit && until.onces.every((index) => decisionOf(model, index)))
    .map(({ until }) => {
      const given = model.onces[until.onces[0] ?? 0]?.kind.text ?? "";
      return problem("end-uncertain", until.at, { given });
    });

/** A decision that names no day may fall on any day until the last other visit of its care. */
function openDecisions(model: CourseModel): Outcome<CourseModel> {
  const problems: Problem[] = [];
  const onces = model.onces.map((once): Once => {
    if (!once.open) return once;
    const to = lastDay(model, once.care);
    if (to < 1) problems.push(problem("visit-when-missing", once.kind.at, { given: once.kind.text }));
    return { ...once, when: { ...once.when, value: { from: 1, to } } };
  });
  return { value: problems.length > 0 ? null : { ...model, onces }, problems };
}
