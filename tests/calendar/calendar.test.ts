import { describe, expect, test } from "vitest";
import { calendarOf, linesOf, timed, window } from "./help.js";

const between = (lines: string[], first: string, last: string) =>
  lines.slice(lines.indexOf(first), lines.indexOf(last) + 1);

describe("rechecks.ics", () => {
  test("begins with what a calendar must have and its name in its language", () => {
    expect(linesOf(calendarOf([timed])).slice(0, 7)).toEqual([
      "BEGIN:VCALENDAR",
      "VERSION:2.0",
      "PRODID:-//hearthsheet//visits//ES",
      "CALSCALE:GREGORIAN",
      "METHOD:PUBLISH",
      "NAME;LANGUAGE=es:Visitas",
      "X-WR-CALNAME:Visitas",
    ]);
  });

  test("a booked visit: on the clinic's clock, keeping its owner busy, with alarms after all else", () => {
    expect(between(linesOf(calendarOf([timed])), "BEGIN:VEVENT", "END:VEVENT")).toEqual([
      "BEGIN:VEVENT",
      "UID:0f3a-change-1@example.org",
      "SEQUENCE:2",
      "DTSTAMP:20260302T223000Z",
      "DTSTART;TZID=America/Chicago:20260303T093000",
      "DTEND;TZID=America/Chicago:20260303T095000",
      "SUMMARY;LANGUAGE=es:Bandage change",
      "TRANSP:OPAQUE",
      "LOCATION:Juniper Row Animal Clinic\\, 18 Juniper Row",
      "DESCRIPTION;LANGUAGE=es:Bring the collar.",
      'ORGANIZER;CN="Juniper Row <Animal> Clinic":mailto:desk@juniper-row.example.org',
      "STATUS:CONFIRMED",
      "CONTACT:(312) 555-0142",
      "BEGIN:VALARM",
      "ACTION:DISPLAY",
      "TRIGGER:-PT14H30M",
      "DESCRIPTION;LANGUAGE=es:Bandage change tomorrow",
      "END:VALARM",
      "BEGIN:VALARM",
      "ACTION:DISPLAY",
      "TRIGGER:-PT1H",
      "DESCRIPTION;LANGUAGE=es:Bandage change in an hour",
      "END:VALARM",
      "END:VEVENT",
    ]);
  });

  /** RFC 5545, 3.6.1: of whole days DTEND is the day after the last. */
  test("a window: whole days up to the day after the last, tentative, keeping nobody busy", () => {
    const lines = linesOf(calendarOf([window]));
    expect(lines).toContain("DTSTART;VALUE=DATE:20260308");
    expect(lines).toContain("DTEND;VALUE=DATE:20260311");
    expect(lines).toContain("TRANSP:TRANSPARENT");
    expect(lines).toContain("STATUS:TENTATIVE");
    expect(lines.filter((line) => line.includes("VTIMEZONE"))).toEqual([]);
  });

  test("a window over the end of February, and over the night the clocks change", () => {
    const end = (last: string) =>
      linesOf(calendarOf([{ ...window, start: last, end: last }])).find((line) => line.startsWith("DTEND"));
    expect(end("2026-02-28")).toBe("DTEND;VALUE=DATE:20260301");
    expect(end("2028-02-28")).toBe("DTEND;VALUE=DATE:20280229");
    expect(end("2026-03-08")).toBe("DTEND;VALUE=DATE:20260309");
    expect(end("2026-12-31")).toBe("DTEND;VALUE=DATE:20270101");
  });

  test("a cancelled visit is sent as cancelled", () => {
    const lines = linesOf(calendarOf([{ ...timed, status: "cancelled", sequence: 3 }]));
    expect(lines).toContain("STATUS:CANCELLED");
    expect(lines).toContain("SEQUENCE:3");
    expect(lines).toContain("TRANSP:TRANSPARENT");
  });

  /** RFC 5546, 3.2.1: a file with METHOD:PUBLISH has an organizer in every event. */
  test("without an address for the clinic no method is stated", () => {
    const text = calendarOf([timed, window], { clinic: { name: "Juniper Row", address: [], email: null } });
    expect(text).not.toMatch(/^(METHOD|ORGANIZER)/m);
    const count = (name: RegExp) => calendarOf([timed, window]).match(name)?.length;
    expect([count(/^METHOD:PUBLISH\r$/gm), count(/^ORGANIZER/gm)]).toEqual([1, 2]);
  });

  test("what is empty is left out", () => {
    const text = calendarOf([{ ...timed, description: "", location: "", phone: "", alarms: [] }]);
    expect(text).not.toMatch(/^(LOCATION|DESCRIPTION|CONTACT|BEGIN:VALARM)/m);
  });

  test("the same bytes each time, whatever the clock and zone of the machine", () => {
    const first = calendarOf([timed, window]);
    const zone = process.env["TZ"];
    try {
      for (const other of ["Pacific/Kiritimati", "America/Sao_Paulo", "UTC"]) {
        process.env["TZ"] = other;
        expect(calendarOf([timed, window])).toBe(first);
      }
    } finally {
      if (zone === undefined) delete process.env["TZ"];
      else process.env["TZ"] = zone;
    }
  });

  test("a zone under its old name gets the name its VTIMEZONE has", () => {
    const lines = linesOf(calendarOf([timed], { zone: "US/Central" }));
    expect(lines).toContain("TZID:America/Chicago");
    expect(lines).toContain("DTSTART;TZID=America/Chicago:20260303T093000");
  });

  test("a zone nobody knows is an error, never another time", () => {
    expect(() => calendarOf([timed], { zone: "Mars/Olympus" })).toThrow();
  });
});
