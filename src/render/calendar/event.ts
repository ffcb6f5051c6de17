import { tz } from "@date-fns/tz";
import { addDays, parseISO } from "date-fns";
import {
  escape as escaped,
  ICalAlarmType,
  type ICalEventData,
  ICalEventStatus,
  ICalEventTransparency,
} from "ical-generator";
import type { Event } from "#handout/handout.js";
import { plain } from "./words.js";
import type { Zone } from "./zone.js";

const statuses = {
  confirmed: ICalEventStatus.CONFIRMED,
  tentative: ICalEventStatus.TENTATIVE,
  cancelled: ICalEventStatus.CANCELLED,
};

/** One event for ical-generator. Only a booked time keeps its owner busy; a window of days does not. */
export function eventData(event: Event, stamp: Date, { tzid }: Zone): ICalEventData {
  const busy = event.status === "confirmed" && !event.allDay;
  return {
    // The generator escapes words, but writes a UID as it comes.
    id: escaped(plain(event.uid), false),
    sequence: event.sequence,
    stamp,
    ...(event.allDay ? days(event) : { ...times(event, tzid), timezone: tzid }),
    status: statuses[event.status],
    transparency: busy ? ICalEventTransparency.OPAQUE : ICalEventTransparency.TRANSPARENT,
    summary: plain(event.summary),
    location: plain(event.location) || null,
    description: plain(event.description) || null,
    // CONTACT is RFC 5545's own property (3.8.4.2), which the generator does not know.
    x: event.phone ? [["CONTACT", plain(event.phone)]] : [],
    alarms: event.alarms.map(({ minutesBefore, text }) => ({
      type: ICalAlarmType.display,
      trigger: minutesBefore * 60,
      description: plain(text),
    })),
  };
}

/** Whole days, in UTC so that no clock moves them; a calendar's end is the day after the last (RFC 5545, 3.6.1). */
function days({ start, end }: Event) {
  const utc = { in: tz("UTC") };
  return { allDay: true, start: parseISO(start, utc), end: addDays(parseISO(end, utc), 1) };
}

function times({ start, end }: Event, tzid: string) {
  const local = { in: tz(tzid) };
  return { start: parseISO(start, local), end: parseISO(end, local) };
}
