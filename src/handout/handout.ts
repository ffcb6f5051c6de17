/**
 * The handout: a document tree in one language, ready to be drawn.
 *
 * Every node carries its value and its words together, and where it came from. A renderer prints the words and may read
 * the value; it never formats, computes or drops one. The vocabulary is small on purpose: add a kind only when no renderer
 * can say a thing with the kinds there are.
 */

import type { Live } from "./live.js";

/** Where a value was written: "plan.yaml:14:11". */
export type From = string;

// ---- inside a line ------------------------------------------------------------------------------------------------

export type Text = { kind: "text"; text: string; strong?: true };
/** iso: "2026-03-07", "2026-03-07T09:30" (both on the clinic's clock) or "2026-03-07/2026-03-10" (first and last day). */
export type When = { kind: "when"; iso: string; text: string; from: From };
/** What to give at one time: text holds amount and unit in words; amount is a decimal, unit a key such as "tablet". */
export type Dose = { kind: "dose"; medicine: string; amount: string; unit: string; text: string; from: From };
/** minor: whole minor units of the currency (cents). */
export type Money = { kind: "money"; minor: number; currency: string; text: string; from: From };
/** e164: "+15550142". */
export type Phone = { kind: "phone"; e164: string; text: string; from: From };
export type Email = { kind: "email"; address: string; text: string; from: From };
/** A sign or instruction from the tables, with the words chosen for it. */
export type Statement = { kind: "statement"; id: string; inlines: Inline[]; from: From };
/** A box to tick by hand. label says, for a reader who cannot see it, what is ticked. id: the same for the same dose. */
export type Tick = { kind: "tick"; label: string; id?: string };
/** Words in another language than the page. */
export type Passage = { kind: "passage"; language: string; inlines: Inline[] };

export type Inline = Text | When | Dose | Money | Phone | Email | Statement | Tick | Passage;

// ---- blocks -------------------------------------------------------------------------------------------------------

/** lead: larger, the one thing to read. small: cautions and sources. */
export type Paragraph = { kind: "paragraph"; role: "lead" | "body" | "small"; inlines: Inline[] };
/** One idea; note is a quieter line under it. */
export type Item = { inlines: Inline[]; note?: Inline[] };
export type List = { kind: "list"; mark: "bullet" | "number" | "tick"; items: Item[] };
export type Cell = { inlines: Inline[]; align: "start" | "center" | "end"; spoken?: Spoken };
/** Words of a whole cell in another language than the page, running their own way. */
export type Spoken = { language: string; direction: "ltr" | "rtl" };
/** The first column heads its row and the head heads its columns. caption names the table for a reader who cannot see it. */
export type Table = {
  kind: "table";
  caption: Inline[];
  head: Cell[];
  rows: Cell[][];
  foot: Cell[][];
  /** Its rows stand close, and on paper its section's title names it in place of a printed caption. */
  dense?: true;
  /** Texts to compare, side by side over the whole width of the page; the last column says something of the row in a word. */
  beside?: true;
};
/** mark: what the day is for. The words of a mark stand in the month's legend and are read aloud with the day. */
export type DayMark = { mark: "discharge" | "booked" | "expected" | "possible" | "closed"; text: string };
export type MonthDay = { iso: string; text: string; label: string; inMonth: boolean; marks: DayMark[] };
/** weeks: rows of seven days from the locale's first day of the week. iso: "2026-03". */
export type Month = {
  kind: "month";
  iso: string;
  title: string;
  weekdays: { short: string; long: string }[];
  weeks: MonthDay[][];
  legend: DayMark[];
};
/**
 * Vector shapes in a box of width x height units, y downwards. stroke in units; fill "ink" | "accent" | "pale" | "none".
 * A page from right to left turns its drawings over, so that time and money run as the words do. upright: what must stay as
 * it is, a side of an animal or a code for a camera, is only moved there, with the line of this x.
 */
export type Shape = {
  path: string;
  upright?: number;
  fill: "ink" | "accent" | "pale" | "none";
  stroke?: "ink" | "accent";
  width?: number;
  dashed?: true;
};
/** A label's x, y is the middle of its baseline for "center", its start for "start"; size in units. It is never turned over. */
export type Label = { text: string; x: number; y: number; size: number; align: "start" | "center" | "end" };
export type Drawing = { width: number; height: number; shapes: Shape[]; labels: Label[] };
/** narrow: the same drawn for a phone, where the labels would be too small to read; null: a phone has no use for it. */
export type Figure = Drawing & { kind: "figure"; id: string; alt: string; caption: Inline[]; narrow?: Drawing | null };
/** Rules to write on, each with its label underneath. */
export type Signature = { kind: "signature"; lines: Inline[][] };

/** A block that holds words and no other block. */
export type Leaf = Paragraph | List | Table | Month | Figure | Signature;
/** Blocks that stand beside each other where there is room, and under each other where there is none. Read in order. */
export type Columns = { kind: "columns"; columns: Leaf[][] };

export type Block = Leaf | Columns;

/** urgent: printed first and larger. level 2 is a section of the page, 3 a part of one. */
export type Section = {
  kind: "section";
  id: string;
  level: 2 | 3;
  weight: "urgent" | "plain";
  title: Inline[];
  blocks: (Block | Section)[];
};

// ---- the calendar -------------------------------------------------------------------------------------------------

/** A visit as a calendar shows it. Timed: start is local "2026-03-07T09:30". All-day: start and end are days, end included. */
export type Event = {
  uid: string;
  sequence: number;
  status: "confirmed" | "tentative" | "cancelled";
  start: string;
  end: string;
  allDay: boolean;
  summary: string;
  description: string;
  location: string;
  phone: string;
  /** Minutes before the start, each with the words to show. */
  alarms: { minutesBefore: number; text: string }[];
  from: From;
};

// ---- the e-mail ----------------------------------------------------------------------------------------------------

export type Mailbox = { name: string; address: string };

/** The same words once in each language: the owner's first. lead: what the words of another language begin with. */
export type LetterPart = { language: string; direction: "ltr" | "rtl"; lead: Inline[]; sections: Section[] };

/** The e-mail that the handout goes with. Its subject can be read by anybody, and so tells no diagnosis. */
export type Letter = {
  /** null where the plan, or the clinic profile, has no address. */
  to: Mailbox | null;
  from: Mailbox | null;
  subject: string;
  /** The same for every letter of one case, person, language and revision, and for no other; 64 hexadecimal digits. */
  id: string;
  /** The ids of the letters it takes the place of, oldest first. */
  replaces: string[];
  parts: LetterPart[];
};

// ---- the document -------------------------------------------------------------------------------------------------

/** A document in one language, ready to be drawn: a node carries its value, its words, and where it came from. */
export type Handout = {
  language: string;
  direction: "ltr" | "rtl";
  /** The heading of the page and the document's title. */
  title: string;
  /** One line under the title: who the animal is. */
  subtitle: Inline[];
  /** Repeated at the head and the foot of each page. */
  running: { patient: string; date: string; clinic: string };
  /** "Page ", " of ", "" and the ten digits of the language. */
  pageWords: { before: string; between: string; after: string; digits: string };
  /** When it was handed over, on the clinic's clock: "2026-03-04T16:30". */
  issued: string;
  zone: string;
  subject: string;
  clinic: { name: string; address: string[]; email: string | null; letterhead?: Inline[][] };
  /** The clinic's colour on white and on a dark screen, "#1c5b66"; null: that of the house. */
  accent?: { light: string; dark: string } | null;
  /** Printed under the title where the language has not been reviewed. */
  translationNotice: Inline[];
  sections: Section[];
  events: Event[];
  calendarName: string;
  letter: Letter;
  /** For a screen that knows what time it is; a handout without it is whole. */
  live?: Live;
  /** The things to know now, each in the words of a short message. */
  messages?: string[];
  /** A section for the container of each medicine, under the title of the sheet they are printed on. */
  labels?: { title: string; sections: Section[] };
};
