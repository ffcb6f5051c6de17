import ical from "ical-generator";
import { encode } from "uqr";
import type { Figure, Label } from "#handout/handout.js";
import { eventOf } from "../events.js";
import { type Page, plainOn } from "../page.js";
import { zoned } from "../zoned.js";
import { upright } from "./shapes.js";

/** A square about 30 mm wide on paper, and room for a line of words beside it. */
const side = 122;
const width = 470;
/** ISO/IEC 18004 asks for four light modules around a code. */
const quiet = 4;
/** Beyond this the modules are too fine for a phone at arm's length: the code then leaves the address out. */
const mostBytes = 600;

/** The next visit as a code for a phone's camera, with words beside it; null where the next visit is not booked. */
export function visitCodeOn(page: Page): Figure | null {
  const { next } = page.view;
  if (!next.visit?.at) return null;
  const { voice } = page;
  const at = next.visit.at;
  const when = plainOn(page, "calendar:day-time", {
    day: voice.shortDay(at.slice(0, 10)),
    time: voice.time(at.slice(11)),
  });
  const label = (text: string, y: number): Label => ({ text, x: side + 12, y, size: 14, align: "start" });
  return {
    kind: "figure",
    id: "visit-code",
    width,
    height: side,
    shapes: upright([{ path: squares(textOf(page, next.visit)), fill: "ink" }], side / 2),
    labels: [
      label(plainOn(page, "calendar:code.scan"), 44),
      label(plainOn(page, "calendar:code.saves"), 66),
      label(voice.capital(when), 88),
    ],
    alt: plainOn(page, "calendar:code.alt", { when: voice.dateTime(at) }),
    caption: [],
  };
}

/**
 * The visit as iCalendar, small: its time is in UTC, so that no time zone has to be told, and its UID and SEQUENCE are those
 * of the calendar file, so that a phone with both shows it once. Lines are not folded: some phones do not undo it.
 */
function textOf(page: Page, visit: Parameters<typeof eventOf>[1]): string {
  const { view } = page;
  const event = eventOf(page, visit);
  const text = (location: string | null) =>
    ical({
      prodId: { company: "hearthsheet", product: "visits" },
      events: [
        {
          id: event.uid,
          sequence: event.sequence,
          stamp: new Date(+zoned(view.discharged, view)),
          start: new Date(+zoned(event.start, view)),
          end: new Date(+zoned(event.end, view)),
          summary: event.summary,
          location,
        },
      ],
    })
      .toString()
      .replaceAll("\r\n ", "");
  const whole = text(event.location);
  return Buffer.byteLength(whole) > mostBytes ? text(null) : whole;
}

/** The dark modules of a code as one path, a stretch of a row at a time. */
function squares(text: string): string {
  const { data, size } = encode(text, { ecc: "L", border: quiet });
  const unit = side / size;
  const at = (modules: number) => Number((modules * unit).toFixed(3));
  return data
    .flatMap((row, y) =>
      row.flatMap((dark, x) => {
        if (!dark || row[x - 1]) return [];
        const end = row.indexOf(false, x);
        return [`M${at(x)} ${at(y)}H${at(end)}V${at(y + 1)}H${at(x)}Z`];
      }),
    )
    .join("");
}
