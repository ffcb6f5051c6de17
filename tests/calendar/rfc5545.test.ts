import { expect, test } from "vitest";
import { calendarOf, linesOf, timed, window } from "./help.js";

/** The examples of RFC 5545 that our events can be: what they hold in, the RFC's own lines out. */
const lines = (...given: Parameters<typeof calendarOf>) => linesOf(calendarOf(...given));

test("3.3.11, a text of three lines", () => {
  const description = "Project XYZ Final Review\nConference Room - 3B\nCome Prepared.";
  expect(lines([{ ...timed, description }])).toContain(
    "DESCRIPTION;LANGUAGE=es:Project XYZ Final Review\\nConference Room - 3B\\nCome Prepared.",
  );
});

test("3.6.1, a festival from June 28 to July 8, 2007: whole days, its end not inclusive, and nobody kept busy", () => {
  const summary = "Festival International de Jazz de Montreal";
  const found = lines([
    { ...window, uid: "20070423T123432Z-541111@example.com", start: "2007-06-28", end: "2007-07-08", summary },
  ]);
  for (const line of [
    "UID:20070423T123432Z-541111@example.com",
    "DTSTART;VALUE=DATE:20070628",
    "DTEND;VALUE=DATE:20070709",
    `SUMMARY;LANGUAGE=es:${summary}`,
    "TRANSP:TRANSPARENT",
  ])
    expect(found).toContain(line);
});

test("3.6.6, an alarm that shows words half an hour before", () => {
  const text = "Breakfast meeting with executive team at 8:30 AM EST.";
  const found = lines([{ ...timed, alarms: [{ minutesBefore: 30, text }] }]);
  const alarm = found.slice(found.indexOf("BEGIN:VALARM"), found.indexOf("END:VALARM"));
  expect(alarm).toEqual(["BEGIN:VALARM", "ACTION:DISPLAY", "TRIGGER:-PT30M", `DESCRIPTION;LANGUAGE=es:${text}`]);
});

test("3.6.5, New York since 2007: summer time from the second Sunday of March to the first of November", () => {
  const found = lines([{ ...timed, start: "2026-03-03T09:30", end: "2026-03-03T09:50" }], { zone: "America/New_York" });
  const ruleOf = (kind: string) => found.slice(found.indexOf(`BEGIN:${kind}`), found.indexOf(`END:${kind}`));
  const [standard, daylight] = [ruleOf("STANDARD"), ruleOf("DAYLIGHT")];
  expect(daylight).toEqual(expect.arrayContaining(["TZOFFSETFROM:-0500", "TZOFFSETTO:-0400", "TZNAME:EDT"]));
  expect(daylight.find((line) => line.startsWith("RRULE"))?.split(/[:;]/)).toEqual(
    expect.arrayContaining(["FREQ=YEARLY", "BYMONTH=3", "BYDAY=2SU"]),
  );
  expect(standard).toEqual(expect.arrayContaining(["TZOFFSETFROM:-0400", "TZOFFSETTO:-0500", "TZNAME:EST"]));
  expect(standard.find((line) => line.startsWith("RRULE"))?.split(/[:;]/)).toEqual(
    expect.arrayContaining(["FREQ=YEARLY", "BYMONTH=11", "BYDAY=1SU"]),
  );
});
