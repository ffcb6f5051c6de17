import { differenceInCalendarDays } from "date-fns/differenceInCalendarDays";
import { parseISO } from "date-fns/parseISO";
import { type Problem, problem } from "#problems/problem.js";

const at = { file: "", line: 1, column: 1, length: 1 };
/** After so many days a paper is hardly news. */
const longPast = 60;

/**
 * What a clock that says today has to say of the day a paper or a visit is of, before today is written down for good: it cannot
 * be of a day to come, but for the one that another zone may be ahead; of long ago it may be, and staff are told.
 */
export function ageOf(path: string, day: string, today: string): Problem[] {
  const days = differenceInCalendarDays(parseISO(today), parseISO(day));
  const values = { path, of: { day }, today: { day: today } };
  if (days < -1) return [problem("clock-behind", at, values)];
  return days > longPast ? [problem("paper-long-past", at, values)] : [];
}
