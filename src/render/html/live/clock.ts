/** The time on a clinic's clock, "2026-03-04T16:30", wherever the device is and whatever its own zone. */
export function clockIn(zone: string, now: Date): string {
  const format = new Intl.DateTimeFormat("en-US", {
    timeZone: zone,
    calendar: "gregory",
    numberingSystem: "latn",
    hourCycle: "h23",
    year: "numeric",
    month: "2-digit",
    day: "2-digit",
    hour: "2-digit",
    minute: "2-digit",
  });
  const part = Object.fromEntries(format.formatToParts(now).map(({ type, value }) => [type, value]));
  return `${part["year"]}-${part["month"]}-${part["day"]}T${part["hour"]}:${part["minute"]}`;
}

const utc = (day: string): Date => new Date(`${day}T00:00Z`);

export const dayAfter = (day: string, count: number): string => {
  const date = utc(day);
  date.setUTCDate(date.getUTCDate() + count);
  return date.toISOString().slice(0, 10);
};

/** 1 Monday - 7 Sunday. */
export const weekdayOf = (day: string): number => utc(day).getUTCDay() || 7;

/** As the hands of the clock show it: an hour more or less on the night the clocks change. */
export const minutesBetween = (first: string, last: string): number =>
  (Date.parse(`${last}Z`) - Date.parse(`${first}Z`)) / 60_000;

/** Which words of a moment fit a day, seen from another. */
export const nearness = (day: string, from: string): "today" | "tomorrow" | "later" => {
  if (day === from) return "today";
  return day === dayAfter(from, 1) ? "tomorrow" : "later";
};
