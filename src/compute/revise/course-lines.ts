import type { Plan } from "#plan/plan.js";
import type { VisitKind } from "#tables/visits.js";
import type { Line, OnceLine, RepeatLine, Span, When } from "../visits/language/line.js";

/** What a visit means for the course: days since the paper before, the kinds of visit it was, and what was decided. */
export type Turn = {
  elapsed: number;
  was: readonly string[];
  /** The kinds of which any visit has taken place until now, this one too. */
  begun: readonly string[];
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

/** When something is due, counted from now: "day 3-5", or "10-14 days after closure"; null where it is over. */
function dueText({ span, after }: When, { elapsed, was }: Pick<Turn, "elapsed" | "was">): string | null {
  if (after && !was.includes(after.value.id))
    return `${daysText(span.value)} after ${after.last ? "the last " : ""}${nameOf(after.value)}`;
  const left = after ? span.value : back(span.value, elapsed);
  return left.to < 1 ? null : dayText(atLeastOne(left));
}

function onceText(line: OnceLine, { elapsed, was }: Turn, missed: string[]): string[] {
  const { kind, when } = line;
  if (was.includes(kind.value.id)) return [];
  const name = `${line.maybe ? "maybe " : ""}${nameOf(kind.value)}`;
  const due = when && dueText(when, { elapsed, was });
  if (!when || due !== null) return [[`${name}${due === null ? "" : ` ${due}`}`, ...slotText(line)].join(", ")];
  if (!line.maybe) missed.push(nameOf(kind.value));
  return [];
}

/** The phase under way, or null where it is over. had: some of it has passed. */
function currentText(line: RepeatLine, turn: Turn, had: boolean): string | null {
  const { limit } = line.end;
  const due = line.first && !turn.begun.includes(line.kind.value.id) ? dueText(line.first, turn) : null;
  if (due !== null) return [...laterText(line, turn), `first ${due}`].join(", ");
  const left = limit && { kind: limit.kind, span: leftOf(limit.kind, limit.span.value, turn, had, line.kind.value) };
  if (left && left.span.to < 1) return null;
  const gap = turn.decided === "stretch" && turn.gap ? turn.gap : line.gap.value;
  return [
    head(line, gap),
    ...endText(left && { ...left, span: atLeastOne(left.span) }, line),
    `first ${dayText(gap)}`,
    ...slotText(line),
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
  return [[head(line, line.gap.value), ...endText(end, line), ...slotText(line)].join(", ")];
}

const head = ({ maybe, kind }: RepeatLine, gap: Span): string =>
  `${maybe ? "maybe " : ""}${nameOf(kind.value)} every ${gap.to === 1 ? "day" : `${range(gap)} days`}`;

type Limit = { kind: "days" | "day" | "times"; span: Span };

function limitText({ kind, span }: Limit): string {
  if (kind === "days") return `for ${daysText(span)}`;
  return kind === "day" ? `until day ${range(span)}` : `${range(span)} ${span.to === 1 ? "time" : "times"}`;
}

function endText(limit: Limit | null, { end: { until } }: RepeatLine): string[] {
  const event = until && (until.value === "bandaged" ? "while bandaged" : `until ${nameOf(until.value)}`);
  const parts = [...(limit ? [limitText(limit)] : []), ...(event ? [event] : [])];
  return parts.length > 1 ? [parts.join(" or ")] : parts;
}

const nameOf = ({ id, words: [name = id] }: VisitKind): string => name;
const range = ({ from, to }: Span): string => (from === to ? `${from}` : `${from}-${to}`);
const daysText = (span: Span): string => `${range(span)} ${span.to === 1 ? "day" : "days"}`;
const dayText = (span: Span): string => (span.to === 1 ? "tomorrow" : `day ${range(span)}`);
/** At what time of day: "not before 14:00". */
const slotText = ({ slot: { from, to } }: Line): string[] => [
  ...(from === null ? [] : [`not before ${from}`]),
  ...(to === null ? [] : [`not after ${to}`]),
];
const back = ({ from, to }: Span, by: number): Span => ({ from: from - by, to: to - by });
const atLeastOne = ({ from, to }: Span): Span => ({ from: Math.max(1, from), to });
