import { tz } from "@date-fns/tz";
import { parseISO } from "date-fns";
import ical, { escape as escaped, foldLines, ICalCalendarMethod } from "ical-generator";
import type { Handout } from "#handout/handout.js";
import { eventData } from "./event.js";
import { inQuotes, plain } from "./words.js";
import { zoneOf } from "./zone.js";

/**
 * The visits as an iCalendar file (RFC 5545 and 7986), its lines ended by CRLF and at most 75 octets long. Its time stamp is
 * the time the handout was issued. Without visits there is nothing to make a calendar of: do not write one.
 */
export const renderCalendar = (handout: Handout): string =>
  calendarOf(handout, handout.events, ICalCalendarMethod.PUBLISH);

/**
 * The visits that will not be, as a file that takes them out of a calendar (RFC 5546, 3.2.5: METHOD:CANCEL, the UID of the event
 * it cancels and a higher SEQUENCE). Null where none is cancelled, or where there is no address an organizer could have.
 */
export function renderCancelled(handout: Handout): string | null {
  const cancelled = handout.events.filter(({ status }) => status === "cancelled");
  return cancelled.length === 0 || !handout.clinic.email
    ? null
    : calendarOf(handout, cancelled, ICalCalendarMethod.CANCEL);
}

function calendarOf(
  { language, zone: name, issued, calendarName, clinic }: Handout,
  events: Handout["events"],
  method: ICalCalendarMethod,
): string {
  const zone = zoneOf(name);
  const stamp = parseISO(issued, { in: tz(name) });
  const calendar = ical({
    prodId: { company: "hearthsheet", product: "visits", language },
    scale: "gregorian",
    // RFC 5546, 3.2.1: what is published has an organizer, and an organizer is an address. Else it is a plain file.
    ...(clinic.email ? { method } : {}),
    // The generator escapes the words of events, but not this.
    name: escaped(plain(calendarName), false),
    timezone: { name: null, generator: () => zone.vtimezone },
    events: events.map((event) => ({ ...eventData(event, stamp, zone), ...organizer(clinic) })),
  });
  return finished(calendar.toString(), language);
}

const organizer = ({ name, email }: Handout["clinic"]) => (email ? { organizer: { name: inQuotes(name), email } } : {});

/** What the generator leaves to be done: properties before alarms (RFC 5545, 3.6.1), the language of words, the last CRLF. */
function finished(text: string, language: string): string {
  const unfolded = text.replaceAll("\r\n ", "");
  const ordered = unfolded.replace(/((?:^BEGIN:VALARM$.*?^END:VALARM\r\n)+)(.*?)(?=^END:VEVENT$)/gms, "$2$1");
  const tagged = ordered.replace(/^(NAME|SUMMARY|DESCRIPTION):/gm, `$1;LANGUAGE=${language}:`);
  return `${foldLines(tagged)}\r\n`;
}
