import { plainSpaces } from "./spaces.js";

/** Local values are formatted as if they were UTC, so the host's own time zone never shows. */
const instant = (local: string): Date => new Date(`${local.length === 10 ? `${local}T00:00` : local}Z`);
/** 2024-01-01 was a Monday. */
const weekdayInstant = (number: number): Date => instant(`2024-01-${String(number).padStart(2, "0")}`);
const onDay = (clock: string): Date => instant(`2000-01-01T${clock}`);

/**
 * Days ("2026-03-03"), times ("09:30") and both ("2026-03-03T09:30") in the words of CLDR. first: how a date says the first of
 * a month, where the language counts it ("1er"); CLDR writes a plain 1.
 */
export function datesOf(tag: string, first = (day: string) => day) {
  const style = (options: Intl.DateTimeFormatOptions) =>
    new Intl.DateTimeFormat(tag, { calendar: "gregory", timeZone: "UTC", ...options });
  const weekdayAndDay = style({ weekday: "long", month: "long", day: "numeric" });
  const weekdayDayTime = style({ weekday: "long", month: "long", day: "numeric", hour: "numeric", minute: "2-digit" });
  const wholeDay = style({ dateStyle: "long" });
  const shortWeekdayAndDay = style({ weekday: "short", month: "short", day: "numeric" });
  const monthAndDay = style({ month: "long", day: "numeric" });
  const dayNumber = style({ day: "numeric" });
  const shortMonthAndDay = style({ month: "short", day: "numeric" });
  const monthAndYear = style({ month: "long", year: "numeric" });
  const hourMinute = style({ hour: "numeric", minute: "2-digit" });
  const weekdayStyles = { long: style({ weekday: "long" }), short: style({ weekday: "short" }) };
  const written = (format: Intl.DateTimeFormat, at: Date) => {
    const parts = format.formatToParts(at);
    if (at.getUTCDate() !== 1) return unbroken(parts);
    return unbroken(parts.map((part) => (part.type === "day" ? { ...part, value: first(part.value) } : part)));
  };

  return {
    /** "Tuesday, March 3" */
    day: (day: string) => written(weekdayAndDay, instant(day)),
    /** "Tuesday, March 3 at 9:30 AM" */
    dateTime: (local: string) => written(weekdayDayTime, instant(local)),
    /** "March 3, 2026" */
    wholeDay: (day: string) => written(wholeDay, instant(day)),
    /** "Tue, Mar 3": in a narrow column it breaks between the day of the week and the date. */
    shortDay: (day: string) => written(shortWeekdayAndDay, instant(day)),
    /** "March 3" */
    monthDay: (day: string) => written(monthAndDay, instant(day)),
    /** "Mar 3" */
    shortDate: (day: string) => written(shortMonthAndDay, instant(day)),
    /** "3" */
    dayNumber: (day: string) => dayNumber.formatToParts(instant(day)).find(({ type }) => type === "day")?.value ?? "",
    /** "2026-03" as "March 2026" */
    month: (month: string) => written(monthAndYear, instant(`${month}-01`)),
    /** "9:30 AM" */
    time: (clock: string) => written(hourMinute, onDay(clock)),
    /** "8:00 AM – 6:00 PM" */
    timeRange: (open: string, close: string) => unbroken(hourMinute.formatRangeToParts(onDay(open), onDay(close))),
    /** 1 Monday - 7 Sunday. */
    weekday: (number: number, length: "long" | "short") => written(weekdayStyles[length], weekdayInstant(number)),
    /** The same for a narrow column: "Mon". Arabic has no short names; there it is the long one without its article. */
    weekdayInColumn: (number: number) => written(weekdayStyles.short, weekdayInstant(number)).replace(/^ال/u, ""),
    /** The day a week begins on, 1 Monday - 7 Sunday. */
    weekStart: firstDayOfWeek(tag),
  };
}

/** What is read as one, and not broken: "9:30 AM", "March 3", and what is one part by itself ("thứ Hai"). */
const wholes: Intl.DateTimeFormatPartTypes[][] = [
  ["minute", "dayPeriod"],
  ["month", "day"],
];

const unbroken = (parts: readonly Pick<Intl.DateTimeFormatPart, "type" | "value">[]): string =>
  parts
    .map(({ type, value }, i) => {
      const beside = [parts[i - 1]?.type, parts[i + 1]?.type];
      const whole = type !== "literal" || wholes.some((pair) => pair.every((one) => beside.includes(one)));
      const plain = plainSpaces(value);
      return whole ? plain.replaceAll(" ", "\u00a0") : plain;
    })
    .join("");

/** Node 20 has weekInfo as a property, later ones as a method; the library types know neither. */
function firstDayOfWeek(tag: string): number {
  type WithWeek = { weekInfo?: { firstDay: number }; getWeekInfo?: () => { firstDay: number } };
  const locale = new Intl.Locale(tag) as unknown as WithWeek;
  return (locale.getWeekInfo?.() ?? locale.weekInfo)?.firstDay ?? 1;
}
