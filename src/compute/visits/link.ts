import { type Outcome, type Problem, problem } from "#problems/problem.js";
import type { VisitKind } from "#tables/visits.js";
import { lastDay } from "./bounds.js";
import { type CourseModel, decisionOf, type Once, type Run } from "./course.js";
import type { End, Line, OnceLine, RepeatLine, Said, Span } from "./language/line.js";

type Found = { index: number | null; problems: Problem[] };
const found = (index: number | null, ...problems: Problem[]): Found => ({ index, problems });

/** Where a decision without a day of its own stands until the course around it is known. */
const anyDay: Span = { from: 1, to: 1 };

/**
 * Holds the lines of a plan against each other: which single visit another waits for, which phase follows which.
 * Problems: "anchor-unknown", "anchor-repeats", "anchor-circle", "bandage-end-unknown", "end-uncertain",
 * "visit-when-missing".
 */
export function link(lines: readonly Line[]): Outcome<CourseModel> {
  const single = lines.filter((line): line is OnceLine => !line.repeats);
  const repeating = lines.filter((line): line is RepeatLine => line.repeats);
  const problems: Problem[] = [];
  const keep = ({ index, problems: more }: Found): number | null => {
    problems.push(...more);
    return index;
  };

  const onces = single.map((line): Once => {
    const { care, at, maybe, kind, when } = line;
    if (!when && !maybe) problems.push(problem("visit-when-missing", kind.at, { given: kind.text }));
    const after = when?.after ? keep(findNamed(lines, single, line, when.after)) : null;
    return { care, at, maybe, kind, open: !when, when: when?.span ?? { ...kind, value: anyDay }, after };
  });
  problems.push(...circles(onces));

  const runs: Run[] = [];
  for (const line of repeating) {
    const { care, at, maybe, kind, gap, first, end } = line;
    const index = end.until && keep(findEnd(lines, single, line, end.until));
    const until = end.until && index !== null ? { ...end.until, value: index } : null;
    if (problems.length === 0 && until && !end.limit && decisionOf(onces, index))
      problems.push(problem("end-uncertain", until.at, { given: until.text }));
    const phase = { at, kind, maybe, gap, first, limit: end.limit, until };
    const before = runs.findLast((run) => run.care === care && run.kind.id === kind.value.id);
    if (before && !first) before.phases.push(phase);
    else runs.push({ care, kind: kind.value, phases: [phase] });
  }
  if (problems.length > 0) return { value: null, problems };
  return openDecisions({ onces, runs });
}

/** The first single visit that fits, in the line's own care before any other; -1 where there is none. */
function find(single: readonly OnceLine[], line: Line, fits: (kind: VisitKind) => boolean): number {
  const own = single.findIndex((other) => other !== line && other.care === line.care && fits(other.kind.value));
  return own >= 0 ? own : single.findIndex((other) => other !== line && fits(other.kind.value));
}

function findNamed(lines: readonly Line[], single: readonly OnceLine[], line: Line, name: Said<VisitKind>): Found {
  const index = find(single, line, (kind) => kind.id === name.value.id);
  if (index >= 0) return found(index);
  if (lines.some(({ repeats, kind }) => repeats && kind.value.id === name.value.id))
    return found(null, problem("anchor-repeats", name.at, { given: name.text }));
  const known = [...new Set(single.filter((other) => other !== line).map(({ kind }) => kind.text))];
  return found(null, problem("anchor-unknown", name.at, { given: name.text, known }));
}

function findEnd(
  lines: readonly Line[],
  single: readonly OnceLine[],
  line: Line,
  until: NonNullable<End["until"]>,
): Found {
  if (until.value !== "bandaged") return findNamed(lines, single, line, { ...until, value: until.value });
  const index = find(single, line, ({ endsBandage }) => endsBandage);
  return index >= 0 ? found(index) : found(null, problem("bandage-end-unknown", until.at, {}));
}

/** Visits that wait for each other, so that none can ever begin. */
function circles(onces: readonly Once[]): Problem[] {
  return onces.flatMap((once, start) => {
    let at = once.after;
    for (let steps = 0; at !== null && at !== start && steps < onces.length; steps++) at = onces[at]?.after ?? null;
    return at === start ? [problem("anchor-circle", once.when.at, { given: once.when.text })] : [];
  });
}

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
