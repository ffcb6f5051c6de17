import { TZDate } from "@date-fns/tz";
import { format } from "date-fns";
import { nearest } from "#problems/near.js";
import { placeOf } from "#problems/place.js";
import { type Problem, problem } from "#problems/problem.js";
import type { Plan } from "../plan.js";

/** The clinic's time zone exists, and so does each time written on its clock (an hour is skipped when clocks go forward). */
export function checkClock({ clinic, discharged, booked, places }: Plan): Problem[] {
  const zone = clinic["time zone"];
  if (!isZone(zone)) {
    const near = nearest(zone, Intl.supportedValuesOf("timeZone"));
    return [problem("zone-unknown", placeOf(places, "clinic", "time zone"), { given: zone, near })];
  }
  const written = [
    { time: discharged, at: placeOf(places, "discharged") },
    ...booked.map((time, i) => ({ time, at: placeOf(places, "booked", i) })),
  ];
  return written
    .filter(({ time }) => isSkipped(time, zone))
    .map(({ time, at }) => problem("time-skipped", at, { given: time.replace("T", " "), zone }));
}

function isZone(zone: string): boolean {
  try {
    new Intl.DateTimeFormat("en", { timeZone: zone });
    return true;
  } catch {
    return false;
  }
}

function isSkipped(time: string, zone: string): boolean {
  const [year = 0, month = 0, day = 0, hour = 0, minute = 0] = time.split(/[-T:]/).map(Number);
  return format(new TZDate(year, month - 1, day, hour, minute, zone), "yyyy-MM-dd'T'HH:mm") !== time;
}
