import ICAL from "ical.js";
import { describe, expect, test } from "vitest";
import { calendarOf, timed } from "./help.js";

/** Zones whose clocks change in March or April, in October or November, in the south, at odd offsets, or never. */
const zones = [
  ...["America/Chicago", "America/New_York", "America/St_Johns", "America/Mexico_City", "America/Bogota"],
  ...["America/Santiago", "Europe/Madrid", "Europe/London", "Asia/Kolkata", "Australia/Sydney", "Pacific/Auckland"],
];
const days = [
  "2026-03-07",
  "2026-03-08",
  "2026-03-29",
  "2026-04-05",
  "2026-09-06",
  "2026-10-25",
  "2026-11-01",
  "2027-07-01",
];

/** The instant that ical.js makes of an event's start with the file's own VTIMEZONE. */
function startOf(calendar: string): Date {
  const component = new ICAL.Component(ICAL.parse(calendar));
  const [vtimezone] = component.getAllSubcomponents("vtimezone");
  const [vevent] = component.getAllSubcomponents("vevent");
  if (!vtimezone || !vevent) throw new Error("no zone or no event");
  const start = vevent.getFirstPropertyValue("dtstart") as ICAL.Time;
  start.zone = new ICAL.Timezone(vtimezone);
  return start.toJSDate();
}

/** That instant on a clock in the zone, by the time zone data of Intl. */
const onTheClock = (instant: Date, timeZone: string) =>
  new Intl.DateTimeFormat("sv-SE", { timeZone, dateStyle: "short", timeStyle: "short" }).format(instant);

describe("the file's own time zone agrees with IANA's as Intl has it", () => {
  test.each(zones)("%s", (zone) => {
    for (const day of days) {
      const event = { ...timed, start: `${day}T09:30`, end: `${day}T09:50` };
      expect(onTheClock(startOf(calendarOf([event], { zone })), zone)).toBe(`${day} 09:30`);
    }
  });

  test("there is one for every zone that Intl knows", () => {
    for (const zone of Intl.supportedValuesOf("timeZone"))
      expect(calendarOf([timed], { zone })).toMatch(/^BEGIN:VTIMEZONE\r$/m);
  });
});
