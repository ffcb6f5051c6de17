import type { Plan } from "#plan/plan.js";
import type { VisitKind } from "#tables/visits.js";
import type { End, Line, OnceLine, RepeatLine, Span, When } from "../visits/language/line.js";

/** What a visit means for the course: days since the paper before, the kinds of visit it was, and what was decided. */
export type Turn = {
  elapsed: number;
  was: readonly string[];
  /** How many days ago the last visit of a kind was, of every kind there has been; this one is 0. */
  ago: ReadonlyMap<string, number>;
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
 * elsewhere: the lines of the plan's other cares, which a visit may have been for as well.
 */
export function restOf(lines: readonly Line[], turn: Turn, elsewhere: readonly Line[] = []): Rest {
  const missed: string[] = [];
  const came = cameOf(lines, turn, elsewhere);
  const now = { ...turn, lapsed: lapsedIn(lines, turn), goesOn: new Set<string>() };
  const repeats = restOfRepeats(lines, now);
  for (const { kind } of repeats.keys()) now.goesOn.add(kind.value.id);
  const course = lines.flatMap((line): string[] => {
    if (line.repeats) return repeats.get(line) ?? [];
    return endedBy(line, turn) || came.has(line) ? [] : onceText(line, now, missed);
  });
  return { course, missed };
}

/**
 * A turn, and what it leaves: the kinds of which more visits follow, so that nobody knows yet which is the last; and whether
 * a single visit of a kind can come no more, for its days are over or those of what it waits for.
 */
type Now = Turn & { goesOn: Set<string>; lapsed: (kind: string) => boolean };

function lapsedIn(lines: readonly Line[], { elapsed, ago }: Turn): Now["lapsed"] {
  const isOver = ({ when }: OnceLine): boolean => {
    if (!when) return false;
    const { after, span } = when;
    if (after) return !after.last && lapsed(after.value.id);
    return span.value.to <= elapsed;
  };
  const lapsed = (id: string): boolean => {
    const alike = lines.filter((line): line is OnceLine => !line.repeats && line.kind.value.id === id);
    return !ago.has(id) && alike.length > 0 && alike.every(isOver);
  };
  return lapsed;
}

/**
 * The single lines that a visit was for. Of several of its kind it was for the one due first, or for as many as it names the
 * kind; and for none whose days are yet to come where a line of another care was due.
 */
function cameOf(lines: readonly Line[], turn: Turn, elsewhere: readonly Line[]): Set<Line> {
  const onces = (among: readonly Line[], kind: string) =>
    among.filter((line): line is OnceLine => !line.repeats && line.kind.value.id === kind);
  return new Set(
    [...new Set(turn.was)].flatMap((kind) => {
      const inOrder = onces(lines, kind).toSorted((a, b) => dueFrom(a, turn) - dueFrom(b, turn));
      const early = !onces(elsewhere, kind).some((line) => isDue(line, turn));
      return inOrder
        .filter((line) => early || isDue(line, turn))
        .slice(0, turn.was.filter((one) => one === kind).length);
    }),
  );
}

/** Whether a single line's first day has come. */
export const isDue = (line: Line, turn: Turn): boolean => !line.repeats && dueFrom(line, turn) <= 0;

/** The first day a single line is due, counted from now; past all days where it waits for another visit. */
function dueFrom({ when }: OnceLine, { elapsed, ago }: Turn): number {
  if (!when) return 0;
  const since = when.after ? ago.get(when.after.value.id) : elapsed;
  return since === undefined ? Number.MAX_SAFE_INTEGER : when.span.value.from - since;
}

/** What is left of each repeating line that goes on. */
function restOfRepeats(lines: readonly Line[], turn: Now): Map<RepeatLine, string[]> {
  const rest = new Map<RepeatLine, string[]>();
  const begun = new Set<string>();
  const skipped = new Set<string>();
  for (const line of lines) {
    if (!line.repeats || endedBy(line, turn)) continue;
    const { id } = line.kind.value;
    const passed = turn.decided === "stretch" && turn.was.includes(id) && !skipped.has(id) && follows(lines, line);
    const due = dueStill(lines, line, turn);
    const isLater = due !== null || begun.has(id);
    const current = passed ? [] : currentText(line, turn, !skippedBefore(lines, line, turn));
    const begins = due === null ? "" : `, first ${due}`;
    const text = isLater ? laterText(line, turn).map((text) => `${text}${begins}`) : current;
    skipped.add(id);
    if (text.length === 0) continue;
    begun.add(id);
    rest.set(line, text);
  }
  return rest;
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
function dueText({ span, after }: When, { elapsed, ago, goesOn, lapsed }: Now): string | null {
  if (after && !after.last && lapsed(after.value.id)) return null;
  const isToCome = after && (after.last ? goesOn.has(after.value.id) : !ago.has(after.value.id));
  if (isToCome) return `${daysText(span.value)} after ${after.last ? "the last " : ""}${nameOf(after.value)}`;
  const left = back(span.value, (after && ago.get(after.value.id)) ?? elapsed);
  return left.to < 1 ? null : dayText(atLeastOne(left));
}

function onceText(line: OnceLine, turn: Now, missed: string[]): string[] {
  const { kind, when } = line;
  const name = `${line.maybe ? "maybe " : ""}${nameOf(kind.value)}`;
  const due = when && dueText(when, turn);
  if (!when || due !== null) return [[`${name}${due === null ? "" : ` ${due}`}`, ...slotText(line)].join(", ")];
  // What waits for a visit that never came was not missed: that one may have been.
  if (!line.maybe && !when.after) missed.push(nameOf(kind.value));
  return [];
}

/**
 * When a line that says its first day begins, if it has not: no visit of its kind has been since the paper that says so, or
 * one that another line of its kind was for.
 */
function dueStill(lines: readonly Line[], line: RepeatLine, turn: Now): string | null {
  const { first, kind } = line;
  if (!first) return null;
  if (!turn.was.includes(kind.value.id)) return dueText(first, turn);
  const since = first.after ? turn.ago.get(first.after.value.id) : turn.elapsed;
  const isToCome = since === undefined || first.span.value.from > since;
  const others = lines.filter(
    (other) => other.kind.value.id === kind.value.id && (!other.repeats || isBefore(lines, other, line)),
  );
  return isToCome && others.length > 0 ? dueText(first, turn) : null;
}

const isBefore = (lines: readonly Line[], one: Line, other: Line): boolean => lines.indexOf(one) < lines.indexOf(other);

/** The phase under way; nothing where it is over. had: some of it has passed. */
function currentText(line: RepeatLine, turn: Now, had: boolean): string[] {
  const gap = turn.decided === "stretch" && turn.gap ? turn.gap : line.gap.value;
  const left = line.end.limit && leftOf(line.end.limit, line, turn, had);
  if (left && left.span.to < (left.kind === "times" ? 1 : gap.from)) return [];
  if (left?.kind === "day" && left.span.to < 2 * gap.from) return [onceMoreText(line, gap, left.span, turn)];
  const end = endText(left && { ...left, span: atLeastOne(left.span) }, line, turn);
  return [[head(line, gap), ...end, `first ${dayText(gap)}`, ...slotText(line)].join(", ")];
}

/** The phase under way has room for one visit; it may have none where it can end before that is due. */
function onceMoreText(line: RepeatLine, gap: Span, end: Span, turn: Now): string {
  const maybe = line.maybe || end.from < gap.to;
  const first = { from: gap.from, to: Math.min(gap.to, end.to) };
  const once = endText({ kind: "times", span: { from: 1, to: 1 } }, line, turn);
  return [head({ ...line, maybe }, gap), ...once, `first ${dayText(first)}`, ...slotText(line)].join(", ");
}

/** What is left of a phase. One that is under way for so many days ends on a day, counted from the day it began. */
function leftOf(
  { kind, span: { value } }: NonNullable<End["limit"]>,
  line: RepeatLine,
  turn: Turn,
  had: boolean,
): Limit {
  if (kind === "day") return { kind, span: back(value, turn.elapsed) };
  if (!had) return { kind, span: value };
  const wasOne = turn.was.includes(line.kind.value.id);
  if (kind === "times") return { kind, span: back(value, wasOne ? 1 : 0) };
  const begins = line.first?.after ? turn.elapsed : Math.min(turn.elapsed, line.first?.span.value.to ?? 1);
  return { kind: "day", span: back(value, turn.elapsed - begins + 1) };
}

/** A phase that has not begun: only a day named in it comes nearer. */
function laterText(line: RepeatLine, turn: Now): string[] {
  const { limit } = line.end;
  const span = limit?.kind === "day" ? back(limit.span.value, turn.elapsed) : limit?.span.value;
  if (span && span.to < 1) return [];
  const end = limit && span ? { kind: limit.kind, span: atLeastOne(span) } : null;
  return [[head(line, line.gap.value), ...endText(end, line, turn), ...slotText(line)].join(", ")];
}

const head = ({ maybe, kind }: RepeatLine, gap: Span): string =>
  `${maybe ? "maybe " : ""}${nameOf(kind.value)} every ${gap.to === 1 ? "day" : `${range(gap)} days`}`;

type Limit = { kind: "days" | "day" | "times"; span: Span };

function limitText({ kind, span }: Limit): string {
  if (kind === "days") return `for ${daysText(span)}`;
  return kind === "day" ? `until day ${range(span)}` : `${range(span)} ${span.to === 1 ? "time" : "times"}`;
}

function endText(limit: Limit | null, { end: { until } }: RepeatLine, { lapsed }: Now): string[] {
  const parts = limit ? [limitText(limit)] : [];
  if (!until) return parts;
  if (until.value === "bandaged") return [...parts, "while bandaged"];
  const name = nameOf(until.value);
  if (limit && lapsed(until.value.id)) return parts;
  return limit ? [`${limitText(limit)} or ${name}`] : [`until ${name}`];
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
