import { TZDate } from "@date-fns/tz";
import type { Facts, LocalTime } from "#compute/facts.js";

/** The instant of a time on the clinic's clock. */
export function zoned(at: LocalTime, { zone }: Pick<Facts, "zone">): TZDate {
  const [year = 0, month = 1, day = 1, hour = 0, minute = 0] = at.split(/\D/).map(Number);
  return new TZDate(year, month - 1, day, hour, minute, zone);
}
