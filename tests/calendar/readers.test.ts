import { execFileSync } from "node:child_process";
import fc from "fast-check";
import ICAL from "ical.js";
import { describe, expect, test } from "vitest";
import type { Event } from "#handout/handout.js";
import { everyNode } from "../handouts/every-node.js";
import { calendarOf, timed, window } from "./help.js";

/** HEARTHSHEET_RUNS=10000 for the long run. */
const runs = { numRuns: Number(process.env["HEARTHSHEET_RUNS"] ?? 200) };

/** What a name may try to be, whole or in pieces among others. */
const hostile = fc
  .array(
    fc.oneof(
      fc.constantFrom("\r\nBcc: a@example.org", "\nEND:VEVENT\r\n", "\r", "\\n", "\\", ";", ",", ":", '"', "^n", "\t"),
      fc.constantFrom("\u2028ATTENDEE:mailto:a@example.org", "\u0085X-A:b", "\u0000", "\u000b", "\u007f", "\ufeff"),
      fc.constantFrom("🐕", "👩🏽‍⚕️", "ñandú", "e\u0301", "\u202e", "\ud83d", "BEGIN:VALARM", "  ", "x".repeat(74)),
      fc.string({ unit: "grapheme", maxLength: 30 }),
      fc.string({ unit: "binary", maxLength: 10 }),
      fc.string({ unit: "grapheme-ascii", minLength: 1000, maxLength: 1000 }),
    ),
    { maxLength: 6 },
  )
  .map((pieces) => pieces.join(""));

const anyEvent: fc.Arbitrary<Event> = fc
  .record({
    uid: fc.uuid(),
    kind: fc.constantFrom(timed, window),
    summary: hostile,
    description: hostile,
    location: hostile,
    phone: fc.constantFrom("", "(312) 555-0142"),
    alarm: hostile,
    minutesBefore: fc.nat(20_000),
  })
  .map(({ kind, alarm, minutesBefore, ...words }) => ({
    ...kind,
    ...words,
    // A visit has a name, and an alarm words: without them it would take the event's.
    summary: `v${words.summary}`,
    alarms: [{ minutesBefore, text: `a${alarm}` }],
  }));

/** What may be told of words in a calendar: breaks are one kind of break, and other control characters are gone. */
const told = (text: string) =>
  [...text.replace(/\r\n|\r|\u0085|\u2028|\u2029/g, "\n")]
    .filter((character) => character === "\n" || character === "\t" || !/^\p{Cc}$/u.test(character))
    .map((character) => (/^[\ud800-\udfff]$/.test(character) ? "\ufffd" : character))
    .join("");

ICAL.design.strict = true;
// NAME is RFC 7986's, 5.1, which ical.js 2 does not know: it is TEXT.
ICAL.design.icalendar.property["name"] = { defaultType: "text" };

function readByIcalJs(text: string) {
  const calendar = new ICAL.Component(ICAL.parse(text));
  const words = (part: ICAL.Component, name: string) => String(part.getFirstPropertyValue(name) ?? "");
  return {
    name: words(calendar, "name"),
    children: calendar.getAllSubcomponents().map(({ name }) => name),
    events: calendar.getAllSubcomponents("vevent").map((event) => ({
      summary: words(event, "summary"),
      description: words(event, "description"),
      location: words(event, "location"),
      contact: words(event, "contact"),
      uid: words(event, "uid"),
      alarms: event.getAllSubcomponents("valarm").map((alarm) => ({
        text: words(alarm, "description"),
        minutesBefore: 0 - (alarm.getFirstPropertyValue("trigger") as ICAL.Duration).toSeconds() / 60,
      })),
    })),
  };
}

const expected = (event: Event) => ({
  summary: told(event.summary),
  description: told(event.description),
  location: told(event.location),
  contact: event.phone,
  uid: event.uid,
  alarms: event.alarms.map(({ minutesBefore, text }) => ({ minutesBefore, text: told(text) })),
});

const python = ["/usr/bin/python3", "python3"].find((command) => {
  try {
    execFileSync(command, ["-c", "import icalendar"], { stdio: "ignore" });
    return true;
  } catch {
    return false;
  }
});

function readByPython(text: string) {
  if (!python) throw new Error("these tests need Debian's python3-icalendar: apt-get install python3-icalendar");
  return JSON.parse(execFileSync(python, ["tests/calendar/read.py"], { input: text, encoding: "utf8" }));
}

describe("whatever words there are", () => {
  test("ical.js in strict mode reads back every one of them", () => {
    fc.assert(
      fc.property(fc.array(anyEvent, { maxLength: 3 }), hostile, (events, calendarName) => {
        const read = readByIcalJs(calendarOf(events, { calendarName: `c${calendarName}` }));
        expect(read.name).toBe(told(`c${calendarName}`));
        expect(read.events).toEqual(events.map(expected));
        const zones = events.some(({ allDay }) => !allDay) ? ["vtimezone"] : [];
        expect(read.children).toEqual([...zones, ...events.map(() => "vevent")]);
      }),
      runs,
    );
  });

  test("lines end with CRLF, have at most 75 octets, and split no character (RFC 5545, 3.1)", () => {
    fc.assert(
      fc.property(anyEvent, hostile, (event, calendarName) => {
        const text = calendarOf([event], { calendarName });
        expect(text.endsWith("END:VCALENDAR\r\n")).toBe(true);
        expect(text.replaceAll("\r\n", "")).not.toMatch(/[\r\n]/);
        for (const line of text.split("\r\n")) {
          expect(Buffer.byteLength(line)).toBeLessThanOrEqual(75);
          expect(line).not.toMatch(/\p{Surrogate}/u);
        }
      }),
      runs,
    );
  });

  test("Debian's python3-icalendar finds nothing wrong, and the same words", () => {
    const events = fc.sample(anyEvent, { seed: 5545, numRuns: 150 });
    expect(readByPython(calendarOf(events)).errors).toEqual([]);
    // Version 4.0.3 undoes "\\\\" last and "%5C" at all, so that "\\n" and "%2C" come back as other words: without those two.
    const tame: Event[] = JSON.parse(JSON.stringify(events).replaceAll("\\\\", "/").replaceAll("%", "/"));
    const { errors, events: read } = readByPython(calendarOf(tame));
    expect(errors).toEqual([]);
    expect(read.map(({ start: _, end: __, ...words }: Record<string, unknown>) => words)).toEqual(tame.map(expected));
  });
});

describe("read by others", () => {
  test("the handout with every node: times on the clinic's clock, with their offset", () => {
    const { errors, names, events } = readByPython(calendarOf(everyNode.events));
    expect(errors).toEqual([]);
    expect(events.map(({ start, end }: { start: string; end: string }) => [start, end])).toEqual([
      ["2026-03-03T09:30:00-06:00", "2026-03-03T09:50:00-06:00"],
      ["2026-03-08", "2026-03-11"],
      ["2026-03-12", "2026-03-13"],
    ]);
    expect(names).not.toContain("BCC");
  });
});
