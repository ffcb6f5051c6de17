import { scalar } from "./scalar.js";
import { isDay, readHours } from "./time.js";

const weekdays = ["monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday"];

const shape =
  /^(?:(?<first>\d{4}-\d{2}-\d{2})(?:\s+to\s+(?<last>\d{4}-\d{2}-\d{2}))?|(?:every\s+)?(?<weekday>[a-z]+?day)s?)(?:\s+(?<hours>\d.*))?$/i;

/**
 * When the owner cannot come: from a day to a day, or on every such weekday (1 Monday - 7 Sunday). hours: only then; the
 * whole day where there are none.
 */
export const unavailable = scalar(
  {
    title: "When the owner cannot come",
    description: "A day, days from-to, or a weekday; with hours, only then",
    examples: ["2026-03-06", "2026-03-06 to 2026-03-09", "2026-03-06 08:00-12:00", "mondays", "mondays 13:00-17:00"],
  },
  (text) => {
    const fault = { fault: "unavailable-unreadable", values: { given: text } };
    const { first, last = first, weekday, hours } = shape.exec(text)?.groups ?? {};
    const on = weekdays.indexOf(weekday?.toLowerCase() ?? "") + 1;
    const times = hours === undefined ? [] : readHours(hours);
    if (!times || (on === 0 && !first)) return fault;
    if (!first || !last) return { from: null, to: null, weekday: on, hours: times };
    if (!isDay(first) || !isDay(last) || last < first) return fault;
    return { from: first, to: last, weekday: null, hours: times };
  },
);
