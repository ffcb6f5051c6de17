import { tzlib_get_ical_block } from "timezones-ical-library";

/** A time zone as calendars write it: its VTIMEZONE, and the name that stands in it (an old name gets its new one). */
export type Zone = { tzid: string; vtimezone: string };

export function zoneOf(name: string): Zone {
  const [vtimezone, param] = tzlib_get_ical_block(name);
  if (!vtimezone || !param) throw new Error(`no VTIMEZONE for the time zone ${name}`);
  return { tzid: param.slice("TZID=".length), vtimezone };
}
