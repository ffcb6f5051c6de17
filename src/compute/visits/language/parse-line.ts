import type { Place } from "#problems/place.js";
import { type Outcome, problem } from "#problems/problem.js";
import type { VisitKind } from "#tables/visits.js";
import type { Slot } from "../../calendar/opening.js";
import { type Cursor, cursorOver, Misread } from "./cursor.js";
import { kindUnknown, takeKind } from "./kinds.js";
import type { End, Line, Said, Span, When } from "./line.js";
import { takeGap } from "./repeats.js";
import { takeBound } from "./slot.js";
import { afterTheDay, takeDay, takeDays, takeTimes } from "./spans.js";

/** What a line is read with: the kinds of visit, the day of discharge, and the repeating kind it may go on with. */
export type Reading = { kinds: readonly VisitKind[]; discharged: string; going: VisitKind | null };

/**
 * Reads one line of the course language.
 *
 *     line    [then] [maybe] KIND clause...           "then" alone goes on with the kind that repeated last
 *     clause  WHEN                                     when a single visit is due
 *             every ... | daily | weekly               the gap of a repeating one
 *             for RANGE UNIT | RANGE times | until DAY | until KIND | while bandaged | or ...
 *             first WHEN | starting WHEN               when a repeating one begins
 *             not before CLOCK | not after CLOCK       at what time of day it may begin
 *             if needed                                the same as maybe
 *     WHEN    DAY | RANGE UNIT after [the last] KIND
 *     DAY     tomorrow | day RANGE | in RANGE UNIT | on YYYY-MM-DD [to YYYY-MM-DD]
 *     RANGE   3 | 3-5 | 3 to 5          UNIT  days | weeks          CLOCK  08:00
 */
export function parseLine(text: string, care: number, at: Place, reading: Reading): Outcome<Line> {
  try {
    return { value: readLine(cursorOver(text, at), care, reading), problems: [] };
  } catch (misread) {
    if (misread instanceof Misread) return { value: null, problems: [misread.problem] };
    throw misread;
  }
}

/** What the clauses of a line have said so far. */
type Clauses = {
  when: When | null;
  gap: Said<Span> | null;
  first: When | null;
  end: End;
  slot: Slot;
  maybe: boolean;
};

function readLine(cursor: Cursor, care: number, reading: Reading): Line {
  const goesOn = cursor.take("then");
  const maybe = cursor.takeOneOf("maybe", "perhaps", "possibly");
  const kind = takeKind(cursor, reading.kinds) ?? sameKind(cursor, goesOn, reading);
  const end = { limit: null, until: null };
  const said: Clauses = { when: null, gap: null, first: null, end, slot: { from: null, to: null }, maybe };
  while (cursor.peek()) {
    if (cursor.takeOneOf(",", ";", ".", "then")) continue;
    readClause(cursor, said, reading);
  }
  const line = { care, at: cursor.at, maybe: said.maybe, kind, slot: said.slot };
  if (said.gap) {
    if (said.when) cursor.fail(problem("course-words-clash", said.when.span.at, { given: said.when.span.text }));
    if (!said.end.limit && !said.end.until) cursor.fail(problem("visit-end-missing", kind.at, { given: kind.text }));
    return { ...line, repeats: true, gap: said.gap, first: said.first, end: said.end };
  }
  const stray = said.first?.span ?? said.end.limit?.span ?? said.end.until;
  if (stray) cursor.fail(problem("course-words-clash", stray.at, { given: stray.text }));
  return { ...line, repeats: false, when: said.when };
}

function sameKind(cursor: Cursor, goesOn: boolean, { kinds, going }: Reading): Said<VisitKind> {
  if (!goesOn || !["every", "daily", "weekly"].includes(cursor.peek()?.text ?? "")) return kindUnknown(cursor, kinds);
  if (!going) return cursor.fail(problem("nothing-to-follow", cursor.said(0, null).at, {}));
  return cursor.said(0, going);
}

function readClause(cursor: Cursor, said: Clauses, reading: Reading): void {
  const start = cursor.position();
  const once = <T>(before: T | null, now: T): T => {
    const { text: given, at } = cursor.said(start, null);
    return before === null ? now : cursor.fail(problem("course-said-twice", at, { given }));
  };
  const gap = takeGap(cursor);
  if (gap) {
    said.gap = once(said.gap, gap);
  } else if (cursor.take("if", "needed") || cursor.take("as", "needed")) {
    said.maybe = true;
  } else if (cursor.take("for")) {
    const span = takeDays(cursor) ?? cursor.lost("3 days", "2 weeks");
    said.end.limit = once(said.end.limit, { kind: "days", span });
  } else if (cursor.take("while", "bandaged")) {
    said.end.until = once(said.end.until, cursor.said(start, "bandaged"));
  } else if (cursor.takeOneOf("until", "till") || ((said.end.limit ?? said.end.until) && orElse(cursor))) {
    readUntil(cursor, said, reading, once);
  } else if (cursor.takeOneOf("first", "starting", "start", "from")) {
    said.first = once(said.first, readWhen(cursor, reading, "tomorrow", "day 3"));
  } else if (cursor.take("not", "before")) {
    said.slot = { ...said.slot, from: once(said.slot.from, takeBound(cursor)) };
  } else if (cursor.take("not", "after")) {
    said.slot = { ...said.slot, to: once(said.slot.to, takeBound(cursor)) };
  } else {
    const times = takeTimes(cursor);
    if (times) said.end.limit = once(said.end.limit, { kind: "times", span: times });
    else said.when = once(said.when, readWhen(cursor, reading, "every", "for", "until", "first"));
  }
}

/** "until day 14 or closure", and "until day 14 or until closure". */
const orElse = (cursor: Cursor): boolean => cursor.take("or") && (cursor.takeOneOf("until", "till") || true);

type Once = <T>(before: T | null, now: T) => T;

function readUntil(cursor: Cursor, { end }: Clauses, { kinds, discharged }: Reading, once: Once): void {
  const day = takeDay(cursor, discharged);
  if (day) {
    end.limit = once(end.limit, { kind: "day", span: day });
    return;
  }
  const event = takeKind(cursor, kinds);
  if (!event && cursor.peek()?.kind === "word") kindUnknown(cursor, kinds);
  end.until = once(end.until, event ?? cursor.lost("day 14", "drain out"));
}

/** "day 10-14", "10-14 days after closure", or "3 days after the last change". */
function readWhen(cursor: Cursor, { kinds, discharged }: Reading, ...instead: string[]): When {
  const days = takeDays(cursor, 0);
  if (!days) {
    const span = takeDay(cursor, discharged) ?? cursor.lost(...instead);
    return { span, after: null };
  }
  if (!cursor.take("after")) cursor.fail(problem("course-days-from-nothing", days.at, { given: days.text }));
  if (cursor.takeOneOf("discharge", "surgery", "today")) return { span: afterTheDay(cursor, days), after: null };
  cursor.take("the");
  const last = cursor.take("last");
  const kind = takeKind(cursor, kinds) ?? kindUnknown(cursor, kinds);
  return { span: last ? afterTheDay(cursor, days) : days, after: { ...kind, last } };
}
