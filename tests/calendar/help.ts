import type { Event, Handout } from "#handout/handout.js";
import { renderCalendar } from "#render/calendar/calendar.js";
import { everyNode } from "../handouts/every-node.js";

export const timed: Event = {
  uid: "0f3a-change-1@example.org",
  sequence: 2,
  status: "confirmed",
  start: "2026-03-03T09:30",
  end: "2026-03-03T09:50",
  allDay: false,
  summary: "Bandage change",
  description: "Bring the collar.",
  location: "Juniper Row Animal Clinic, 18 Juniper Row",
  phone: "(312) 555-0142",
  alarms: [
    { minutesBefore: 14 * 60 + 30, text: "Bandage change tomorrow" },
    { minutesBefore: 60, text: "Bandage change in an hour" },
  ],
  from: "plan.yaml:1:1",
};

export const window: Event = {
  ...timed,
  uid: "0f3a-change-2@example.org",
  status: "tentative",
  start: "2026-03-08",
  end: "2026-03-10",
  allDay: true,
  alarms: [],
};

/** The calendar of these events, in a handout that is otherwise the one with every node. */
export const calendarOf = (events: Event[], other: Partial<Handout> = {}): string =>
  renderCalendar({ ...everyNode, language: "es", calendarName: "Visitas", events, ...other });

/** The lines of a calendar, folds undone. */
export const linesOf = (calendar: string): string[] => calendar.replaceAll("\r\n ", "").split("\r\n").slice(0, -1);
