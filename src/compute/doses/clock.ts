import { TZDate } from "@date-fns/tz";
import { addDays, differenceInMinutes, format } from "date-fns";
import type { Clock, Day, LocalTime } from "../facts.js";

/** The moment of a local time in a zone; a time that the clocks skip is the same wait after midnight, an hour later. */
function moment(at: LocalTime, zone: string): TZDate {
  const [year = 0, month = 0, day = 0, hour = 0, minute = 0] = at.split(/[-T:]/).map(Number);
  return new TZDate(year, month - 1, day, hour, minute, zone);
}

/** Real hours from one local time to another, clock changes counted. */
export const hoursBetween = (from: LocalTime, to: LocalTime, zone: string): number =>
  differenceInMinutes(moment(to, zone), moment(from, zone)) / 60;

/** A time of day on a day, as the clocks there show it. */
export const localTime = (day: Day, at: Clock, zone: string): LocalTime =>
  format(moment(`${day}T${at}`, zone), "yyyy-MM-dd'T'HH:mm");

export const dayOf = (at: LocalTime): Day => at.slice(0, 10);

/** The day so many days later. */
export const dayAfter = (day: Day, count: number): Day => format(addDays(`${day}T00:00`, count), "yyyy-MM-dd");
