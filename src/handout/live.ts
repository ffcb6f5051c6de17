/**
 * What a page on a screen needs to tell what counts at this moment. It chooses from these sentences by the clock and makes
 * none. Days and times are on the clinic's clock, in the zone of the handout: "2026-03-04", "2026-03-04T16:30".
 */
export type Live = {
  /** The name under which ticks are kept on a device: one for each case and revision. */
  key: string;
  /** The clock is believed from the day of discharge until the last day for which the clinic's days are known. */
  known: { from: string; to: string };
  /** The day of the last visit or dose. */
  lastDay: string;
  /** Each stretch of the clinic's week, 1 Monday - 7 Sunday. */
  week: OpenStretch[];
  /** Days on which it is shut all the same. */
  shut: string[];
  ring: { open: Ring; closed: Ring };
  doses: LiveDose[];
  parts: LivePart[];
  visits: LiveVisit[];
  words: LiveWords;
};

/** Words for one time: on the day itself, the day before, and from farther away. */
export type Moment = { today: string; tomorrow: string; later: string };

/** now: said while it lasts. next: said before it. */
export type OpenStretch = { weekday: number; open: string; close: string; now: string; next: Moment };

/** who: "Ring Juniper Row Animal Clinic:"; text: the number as it is written, e164 as it is dialled. */
export type Ring = { who: string; e164: string; text: string };

/** id: that of its box in the handout. at: when it is due. */
export type LiveDose = { id: string; medicine: string; at: string; when: Moment; text: string };

/** A part of the day from a time on, until the next part, with its heading and what is done in it. */
export type LivePart = { from: string; title: string; steps: { id: string; text: string }[] };

/** until: the last minute or day of it. day: that of an agreed time, else null and all words of the moment are the same. */
export type LiveVisit = { until: string; day: string | null; when: Moment; text: string };

export type LiveWords = {
  title: string;
  closed: string;
  /** Where the clock cannot be believed, or the clinic's days are no longer known. */
  unsure: string;
  /** After the last day. */
  over: string;
  /** Over doses whose time has just come; then over those of longer ago that are not ticked, and under these. */
  due: string;
  asked: string;
  missed: string;
  nextDose: string;
  nextVisit: string;
  calendar: string;
  print: string;
  /** What happens to ticks: they stay on the device. */
  ticks: string;
};
