import { TZDate } from "@date-fns/tz";
import { addMinutes, differenceInMinutes, format, subDays } from "date-fns";
import type { LocalTime, Visit } from "#compute/facts.js";
import type { Event } from "#handout/handout.js";
import { placeText } from "#problems/place.js";
import { type Page, plainOn } from "./page.js";
import { zoned } from "./zoned.js";

/** When an owner is reminded the evening before. Common practice, no source. */
const evening = 18;
const shortlyBefore = 60;

/** The visits as a calendar shows them. Their summaries can be read over a shoulder, and so tell no diagnosis. */
export const eventsOf = (page: Page): Event[] => [
  ...page.view.course.visits.map((visit) => eventOf(page, visit)),
  ...(page.view.changes?.gone ?? []).map(
    (visit): Event => ({ ...eventOf(page, visit), status: "cancelled", alarms: [] }),
  ),
];

export function eventOf(page: Page, visit: Visit): Event {
  const { view } = page;
  const where = visit.where ?? view.clinic.name;
  const common = {
    uid: `${encodeURIComponent(view.caseId)}-${encodeURIComponent(visit.id)}@hearthsheet.invalid`,
    sequence: view.revision,
    location: visit.where ?? [view.clinic.name, ...view.clinic.address].join(", "),
    phone: view.clinic.phone,
    from: placeText(visit.from),
  };
  const words = (part: string) =>
    plainOn(page, `calendar:event.${visit.certainty}.${part}`, { where, phone: page.voice.phone(view.clinic.phone) });
  if (visit.certainty === "booked" && visit.at)
    return {
      ...common,
      status: "confirmed",
      start: visit.at,
      end: local(addMinutes(zoned(visit.at, view), visit.minutes)),
      allDay: false,
      summary: words("summary"),
      description: words("description"),
      alarms: alarmsOf(page, visit.at, where),
    };
  return {
    ...common,
    status: "tentative",
    start: visit.earliest,
    end: visit.latest,
    allDay: true,
    summary: words("summary"),
    description: words("description"),
    alarms: [],
  };
}

/** Minutes that really pass: on the night the clocks change the evening before is an hour nearer or farther. */
function alarmsOf(page: Page, at: LocalTime, where: string): Event["alarms"] {
  const start = zoned(at, page.view);
  const dayBefore = subDays(start, 1);
  const eve = new TZDate(dayBefore.getFullYear(), dayBefore.getMonth(), dayBefore.getDate(), evening, page.view.zone);
  const time = page.voice.time(at.slice(11));
  return [
    { minutesBefore: differenceInMinutes(start, eve), text: plainOn(page, "calendar:alarm.evening", { where, time }) },
    { minutesBefore: shortlyBefore, text: plainOn(page, "calendar:alarm.soon", { where, time }) },
  ];
}

const local = (date: Date): LocalTime => format(date, "yyyy-MM-dd'T'HH:mm");
