import { differenceInCalendarDays, parseISO } from "date-fns";
import type { Amount, Care, Day, Facts, Statement } from "./facts.js";

type Told = Pick<Facts, "care" | "normal" | "avoid">;

/**
 * Care as it stands on a later paper: since when there is each, and of what is normal or forbidden for some days, how many are
 * left. A swelling that was normal for four days is none a week later. day: that of the paper.
 */
export function sinceBefore<T extends Told>(now: T, { care: before }: Pick<Facts, "care">, day: Day): T {
  const care = now.care.map((one) => ({ ...one, since: before.find((old) => isSame(one, old))?.since ?? one.since }));
  const left = (list: readonly Statement[]) => list.flatMap((one) => leftOf(one, passed(one, care, day)));
  return { ...now, care, normal: left(now.normal), avoid: left(now.avoid) };
}

/** Another bandage is no other care. */
const isSame = (one: Care, other: Care): boolean =>
  one.topic === other.topic && one.site === other.site && one.side === other.side;

/** Whole days since the last of the care that a statement is about began; none where it is about no care. */
function passed({ topics }: Statement, care: readonly Care[], day: Day): number {
  const since = care.flatMap((one) => (topics.includes(one.topic) ? one.since : [])).toSorted();
  const last = since.at(-1);
  return last === undefined ? 0 : differenceInCalendarDays(parseISO(day), parseISO(last));
}

function leftOf(statement: Statement, days: number): Statement[] {
  const entries = Object.entries(statement.values);
  const values = entries.map(([name, value]): [string, Amount | string] => [
    name,
    isDays(value) ? less(value, days) : value,
  ]);
  const isOver = values.some(([, value]) => isDays(value) && Number(value.value) < 1);
  return isOver ? [] : [{ ...statement, values: Object.fromEntries(values) }];
}

const isDays = (value: Amount | string): value is Amount => typeof value === "object" && value.unit === "day";
const less = ({ value, unit }: Amount, days: number): Amount => ({ value: String(Number(value) - days), unit });
