import type { Live, LiveDose, LivePart, LiveVisit } from "#handout/live.js";
import { minutesBetween, nearness } from "./clock.js";

/** Something with a time, in the words that fit the day it is looked at. */
export type Told = { id: string; when: string; text: string };

/** So long a dose counts as due now; after that the page only asks. Common practice, no source. */
const dueMinutes = 120;

/**
 * The newest dose of each medicine whose time has come, unless it is ticked: those due now, and those of longer ago, which
 * nobody may be told to give. One before the newest is past mending.
 */
export function dosesDue(
  { doses }: Live,
  now: string,
  ticked: (id: string) => boolean,
): { due: Told[]; asked: Told[] } {
  const newest = new Map<string, LiveDose>();
  for (const dose of doses) {
    const before = newest.get(dose.medicine);
    if (dose.at <= now && (!before || before.at < dose.at)) newest.set(dose.medicine, dose);
  }
  const open = [...newest.values()].filter(({ id }) => !ticked(id));
  const isDue = ({ at }: LiveDose) => minutesBetween(at, now) < dueMinutes;
  return {
    due: open.filter(isDue).map((dose) => tell(dose, now)),
    asked: open.filter((dose) => !isDue(dose)).map((dose) => tell(dose, now)),
  };
}

/** The doses of the next time at which there are any. */
export function dosesNext({ doses }: Live, now: string): Told[] {
  const coming = doses.filter(({ at }) => at > now);
  const first = coming.reduce((at, dose) => (at === "" || dose.at < at ? dose.at : at), "");
  return coming.filter(({ at }) => at === first).map((dose) => tell(dose, now));
}

const tell = ({ at, id, text, when }: LiveDose, now: string): Told => ({ id, text, when: when[near(at, now)] });
const near = (at: string, now: string) => nearness(at.slice(0, 10), now.slice(0, 10));

/** What is done in the part of the day it is; where there is nothing, in the next part that has something. */
export function stepsAt({ parts }: Live, now: string): LivePart | undefined {
  const time = now.slice(11);
  const sorted = [...parts].sort((a, b) => (a.from < b.from ? -1 : 1));
  const index = sorted.findLastIndex(({ from }) => from <= time);
  const present = index < 0 ? sorted.length - 1 : index;
  return [...sorted.slice(present), ...sorted.slice(0, present)].find(({ steps }) => steps.length > 0);
}

/** The first visit that is not over: an agreed one until its time, one without a time until its last day. */
export function visitNext({ visits }: Live, now: string): Told | undefined {
  const begins = ({ until }: LiveVisit) => until;
  const [first] = visits
    .filter((visit) => begins(visit) >= now.slice(0, visit.until.length))
    .sort((a, b) => (begins(a) < begins(b) ? -1 : 1));
  return first && { id: "", text: first.text, when: first.when[first.day ? near(first.day, now) : "later"] };
}
