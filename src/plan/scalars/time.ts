import { isValid, parse } from "date-fns";
import { scalar } from "./scalar.js";

const real = (text: string, format: string) => isValid(parse(text, format, new Date(0)));

export const isDay = (text: string) => /^\d{4}-\d{2}-\d{2}$/.test(text) && real(text, "yyyy-MM-dd");

/** A calendar day, "2026-03-04". */
export const day = scalar(
  { title: "Day", description: "Year-month-day", examples: ["2026-03-04"], pattern: "^\\d{4}-\\d{2}-\\d{2}$" },
  (text) => (isDay(text) ? text : { fault: "date-unreadable", values: { given: text } }),
);

/** A month or a day of birth, "2019-05" or "2019-05-17". */
export const birth = scalar(
  { title: "Born", description: "Year, year-month or year-month-day", examples: ["2019-05", "2019-05-17"] },
  (text) =>
    (/^\d{4}$/.test(text) && real(text, "yyyy")) ||
    (/^\d{4}-\d{2}$/.test(text) && real(text, "yyyy-MM")) ||
    (/^\d{4}-\d{2}-\d{2}$/.test(text) && real(text, "yyyy-MM-dd"))
      ? text
      : { fault: "date-unreadable", values: { given: text } },
);

const clockShape = /^([01]?\d|2[0-3]):([0-5]\d)$/;
const twoDigits = (clock: string) => clock.padStart(5, "0");

/** A time of day on a 24-hour clock, "08:00". */
export const clock = scalar(
  { title: "Time", description: "Hour:minute on a 24-hour clock", examples: ["08:00", "16:30"] },
  (text) => (clockShape.test(text) ? twoDigits(text) : { fault: "time-unreadable", values: { given: text } }),
);

/** A day and a time on the clinic's clock, "2026-03-04 16:30", as "2026-03-04T16:30". */
export const localTime = scalar(
  { title: "Day and time", description: "Day and time on the clinic's clock", examples: ["2026-03-04 16:30"] },
  (text) => {
    const [date = "", time = "", ...rest] = text.split(/[ T]+/);
    if (!isDay(date)) return { fault: "date-unreadable", values: { given: text } };
    if (rest.length > 0 || !clockShape.test(time))
      return { fault: "time-unreadable", values: { given: time || text }, offset: time ? text.indexOf(time) : 0 };
    return `${date}T${twoDigits(time)}`;
  },
);

/** Opening hours of a day: "08:00-18:00", "08:00-12:00, 14:00-18:00" or "closed". */
export const hours = scalar(
  {
    title: "Opening hours",
    description: "One or more stretches from-to, or closed",
    examples: ["08:00-18:00", "08:00-12:00, 14:00-18:00", "closed"],
  },
  (text) => (text === "closed" ? [] : (readHours(text) ?? { fault: "hours-unreadable", values: { given: text } })),
);

/** "08:00-12:00, 14:00-18:00" as stretches that follow each other; null where it is something else. */
export function readHours(text: string): { open: string; close: string }[] | null {
  const stretches = text.split(/\s*,\s*/).map((stretch) => stretch.split(/\s*[-–]\s*/));
  const ordered = stretches.flat().map(twoDigits);
  const rising = ordered.every((time, i) => i === 0 || (ordered[i - 1] ?? "") < time);
  if (!stretches.every((ends) => ends.length === 2 && ends.every((end) => clockShape.test(end))) || !rising)
    return null;
  return stretches.map(([open = "", close = ""]) => ({ open: twoDigits(open), close: twoDigits(close) }));
}
