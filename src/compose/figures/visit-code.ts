import ical from "ical-generator";
import { encode } from "uqr";
import type { Drawing, Figure, Label, Shape } from "#handout/handout.js";
import { eventOf } from "../events.js";
import { type Page, plainOn } from "../page.js";
import { zoned } from "../zoned.js";
import { upright } from "./shapes.js";

/** ISO/IEC 18004 asks for four light modules around a code. */
const quiet = 4;
/** Beyond this the modules are too fine for a phone at arm's length: the code then leaves the address out. */
const mostBytes = 600;
const module = 2;

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
  const text = textOf(page, next.visit);
  const told = [plainOn(page, "calendar:code.scan"), plainOn(page, "calendar:code.saves"), voice.capital(when)];
  return {
    kind: "figure",
    id: "visit-code",
    ...beside(text, told),
    // A phone cannot scan its own screen; its page has the calendar file to press.
    narrow: null,
    alt: plainOn(page, "calendar:code.alt", { when: voice.dateTime(at) }),
    caption: [],
  };
}

/** A square about 30 mm wide on paper, and room for a line of words beside it: the more modules, the more units in a line. */
function beside(text: string, told: string[]): Drawing {
  const { side, shapes } = codeOf(text);
  const line = side / 5.5;
  const labels = told.map((text, i): Label => {
    const y = Math.round(line * (2 + i));
    return { text, x: Math.round(side + line / 2), y, size: Math.round(line * 0.64), align: "start" };
  });
  return { width: Math.round(side * 3.7), height: side, shapes, labels };
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

/** The dark modules as lines, a row of them after the other; a module is two units wide, so that its middle is a whole one. */
function codeOf(text: string): { side: number; shapes: Shape[] } {
  const { data, size } = encode(text, { ecc: "L", border: quiet });
  const at = (modules: number) => modules * module;
  const path = data.map((row, y) => {
    let pen = 0;
    const lines = row.flatMap((dark, x) => {
      if (!dark || row[x - 1]) return [];
      const [from, end] = [pen, row.indexOf(false, x)];
      pen = end;
      return [from === 0 ? `M${at(x)} ${at(y + 0.5)}h${at(end - x)}` : `m${at(x - from)} 0h${at(end - x)}`];
    });
    return lines.join("");
  });
  const side = at(size);
  const code: Shape = { path: path.join(""), fill: "none", stroke: "ink", width: module };
  return { side, shapes: upright([code], side / 2) };
}
