import ICAL from "ical.js";
import { describe, expect, test } from "vitest";
import type { Event } from "#handout/handout.js";
import { reviseEvents } from "#render/calendar/revise.js";
import { calendarOf, timed, window } from "./help.js";

const uids = ["a", "b", "c"].map((name) => `0f3a-${name}@hearthsheet.invalid`);
const [a = "", b = "", c = ""] = uids;
const event = (uid: string, more: Partial<Event> = {}): Event => ({ ...timed, uid, sequence: 1, ...more });
const brief = (events: Event[]) => events.map(({ uid, sequence, status }) => [uid, sequence, status]);

describe("a revised plan", () => {
  // RFC 5546, 2.1.4: SEQUENCE is raised when an event is revised, and stays where it is not.
  test("keeps the UID of a visit, and raises SEQUENCE where it has changed", () => {
    const moved = event(a, { sequence: 0, start: "2026-03-04T10:00", end: "2026-03-04T10:20" });
    const same = event(b, { sequence: 5, from: "plan.yaml:30:7" });
    expect(brief(reviseEvents([event(a), event(b)], [moved, same]))).toEqual([
      [a, 2, "confirmed"],
      [b, 1, "confirmed"],
    ]);
    expect(reviseEvents([event(a)], [{ ...moved, sequence: 7 }])[0]?.sequence).toBe(7);
  });

  test("tells what is no longer planned as cancelled, once", () => {
    const first = reviseEvents([], [event(a), event(b), { ...window, uid: c }]);
    const second = reviseEvents(first, [event(a)]);
    expect(brief(second)).toEqual([
      [a, 1, "confirmed"],
      [b, 2, "cancelled"],
      [c, 3, "cancelled"],
    ]);
    expect(brief(reviseEvents(second, [event(a)]))).toEqual([[a, 1, "confirmed"]]);
    expect(brief(reviseEvents(second, [event(a), event(b)]))).toContainEqual([b, 3, "confirmed"]);
  });

  test("is read as one calendar: every event with its organizer, the cancelled without alarms", () => {
    const events = reviseEvents(
      [event(a), event(b)],
      [event(a, { start: "2026-03-04T10:00", end: "2026-03-04T10:20" })],
    );
    ICAL.design.strict = true;
    const calendar = new ICAL.Component(ICAL.parse(calendarOf(events)));
    const read = calendar.getAllSubcomponents("vevent").map((one) => ({
      uid: one.getFirstPropertyValue("uid"),
      sequence: one.getFirstPropertyValue("sequence"),
      status: one.getFirstPropertyValue("status"),
      organizer: one.getFirstPropertyValue("organizer"),
      alarms: one.getAllSubcomponents("valarm").length,
    }));
    const organizer = "mailto:desk@juniper-row.example.org";
    expect(read).toEqual([
      { uid: a, sequence: 2, status: "CONFIRMED", organizer, alarms: 2 },
      { uid: b, sequence: 2, status: "CANCELLED", organizer, alarms: 0 },
    ]);
  });
});
