import type { Plan } from "#plan/plan.js";
import type { VisitKind } from "#tables/visits.js";
import type { Line, OnceLine, RepeatLine, Span } from "../visits/language/line.js";

/** What a visit means for the course: days since the paper before, the kinds of visit it was, and what was decided. */
export type Turn = {
  elapsed: number;
  was: readonly string[];
  decided: Plan["done"][number]["decided"];
  /** The new gap in days, where the visits are stretched. */
  gap: Span | null;
};

/** The course of one care from the day of a visit on. missed: what should have taken place by now, and did not. */
export type Rest = { course: string[]; missed: string[] };

/** The visits that end where a wound is closed; those of other kinds go on. */
const untilClosed = ["bandage-change", "wound-flush", "packing-removal", "closure"];

/**
 * Counts the lines of a course from the day of a visit, which is the new day 0, and drops what is over or was decided
 * against. Within a run the phase that is under way loses the days and visits it has had; a later one keeps its own.
 */
export function restOf(lines: readonly Line[], turn: Turn): Rest {
  const missed: string[] = [];
  const begun = new Set<string>();
  const skipped = new Set<string>();
  const course = lines.flatMap((line): string[] => {
    if (endedBy(line, turn)) return [];
    if (!line.repeats) return onceText(line, turn, missed);
    const { id } = line.kind.value;
    if (begun.has(id)) return laterText(line, turn);
    const passed = turn.decided === "stretch" && turn.was.includes(id) && !skipped.has(id) && follows(lines, line);
    skipped.add(id);
    const text = passed ? null : currentText(line, turn, !skippedBefore(lines, line, turn));
    if (text === null) return [];
    begun.add(id);
    return [text];
  });
  return { course, missed };
}

function endedBy(line: Line, { decided, was }: Turn): boolean {
  const { id } = line.kind.value;
  if (decided === "stop") return line.repeats || line.maybe;
  if (decided === "close") return untilClosed.includes(id);
  return (
    line.repeats &&
    line.end.until !== null &&
    line.end.until.value !== "bandaged" &&
    was.includes(line.end.until.value.id)
  );
}

/** Whether another phase of the same visits comes after this one. */
const follows = (lines: readonly Line[], line: RepeatLine): boolean =>
  lines.slice(lines.indexOf(line) + 1).some((other) => other.repeats && other.kind.value.id === line.kind.value.id);

/** The phase before was passed over for this one: this one has had no days yet. */
const skippedBefore = (lines: readonly Line[], line: RepeatLine, { decided, was }: Turn): boolean =>
  decided === "stretch" &&
  was.includes(line.kind.value.id) &&
  lines.slice(0, lines.indexOf(line)).some((other) => other.repeats && other.kind.value.id === line.kind.value.id);

function onceText(line: OnceLine, { elapsed, was }: Turn, missed: string[]): string[] {
  const { kind, when } = line;
  if (was.includes(kind.value.id)) return [];
  const name = `${line.maybe ? "maybe " : ""}${nameOf(kind.value)}`;
  if (!when) return [name];
  if (when.after && !was.includes(when.after.value.id))
    return [`${name} ${range(when.span.value)} days after ${nameOf(when.after.value)}`];
  const span = when.after ? when.span.value : back(when.span.value, elapsed);
  if (span.to >= 1) return [`${name} day ${range(atLeastOne(span))}`];
  if (!line.maybe) missed.push(nameOf(kind.value));
  return [];
}

/** The phase under way, or null where it is over. had: some of it has passed. */
function currentText(line: RepeatLine, turn: Turn, had: boolean): string | null {
  const { limit } = line.end;
  const left = limit && { kind: limit.kind, span: leftOf(limit.kind, limit.span.value, turn, had, line.kind.value) };
  if (left && left.span.to < 1) return null;
  const gap = turn.decided === "stretch" && turn.gap ? turn.gap : line.gap.value;
  return [
    head(line, gap),
    ...endText(left && { ...left, span: atLeastOne(left.span) }, line),
    `first day ${range(gap)}`,
  ].join(", ");
}

function leftOf(kind: "days" | "day" | "times", span: Span, { elapsed, was }: Turn, had: boolean, of: VisitKind): Span {
  if (kind === "day") return back(span, elapsed);
  if (!had) return span;
  return back(span, kind === "days" ? elapsed : was.includes(of.id) ? 1 : 0);
}

/** A phase that has not begun: only a day named in it comes nearer. */
function laterText(line: RepeatLine, { elapsed }: Turn): string[] {
  const { limit } = line.end;
  const span = limit?.kind === "day" ? back(limit.span.value, elapsed) : limit?.span.value;
  if (span && span.to < 1) return [];
  const end = limit && span ? { kind: limit.kind, span: atLeastOne(span) } : null;
  return [[head(line, line.gap.value), ...endText(end, line)].join(", ")];
}

const head = ({ maybe, kind }: RepeatLine, gap: Span): string =>
  `${maybe ? "maybe " : ""}${nameOf(kind.value)} every ${range(gap)} days`;

function endText(
  limit: { kind: "days" | "day" | "times"; span: Span } | null,
  { end: { until } }: RepeatLine,
): string[] {
  const words = { days: "for N days", day: "until day N", times: "N times" };
  const event = until && (until.value === "bandaged" ? "while bandaged" : `until ${nameOf(until.value)}`);
  const parts = [...(limit ? [words[limit.kind].replace("N", range(limit.span))] : []), ...(event ? [event] : [])];
  return parts.length > 1 ? [parts.join(" or ")] : parts;
}

const nameOf = ({ id, words: [name = id] }: VisitKind): string => name;
const range = ({ from, to }: Span): string => (from === to ? `${from}` : `${from}-${to}`);
const back = ({ from, to }: Span, by: number): Span => ({ from: from - by, to: to - by });
const atLeastOne = ({ from, to }: Span): Span => ({ from: Math.max(1, from), to });
