import { type Outcome, type Problem, problem } from "#problems/problem.js";
import type { Clock, LocalTime } from "../facts.js";
import type { Asked } from "./asked.js";
import { dayAfter, dayOf, hoursBetween, localTime } from "./clock.js";
import { leastGap, nextTime, type Timed } from "./next-time.js";
import { partOf, type Slot } from "./slots.js";

/** The first dose at home may come this share of the interval after the last at the clinic; common practice, no source. */
const mostGap = 3 / 2;

/** The first dose at home, and when the clinic last gave it. */
export type Start = { first: Timed; lastGiven: LocalTime | null };

/**
 * When to begin: as the plan says, or at the household time that follows from the last dose at the clinic. A time of day
 * alone is the day of discharge for what was given, and the next time the clock shows it for what is to be given.
 */
export function startOf(asked: Asked, hours: number, slots: readonly Slot[]): Outcome<Start> {
  const { planned, discharged, zone } = asked;
  const given = planned["last given"];
  const lastGiven = given === undefined || given === "not given" ? null : onDay(given, dayOf(discharged));
  if (lastGiven !== null && lastGiven > discharged) {
    const values = { medicine: planned.name, given: written(lastGiven) };
    return { value: null, problems: [problem("last-given-after-discharge", asked.at("last given"), values)] };
  }
  if (planned.first !== undefined) return told(asked, planned.first, hours, lastGiven);

  const first = nextTime(lastGiven ?? discharged, lastGiven === null ? 0 : hours, slots, zone, discharged);
  const missing = given === undefined ? [problem("last-given-missing", asked.at(), { medicine: planned.name })] : [];
  return { value: { first, lastGiven }, problems: [...missing, ...late(asked, first.at, hours, lastGiven)] };
}

function told(asked: Asked, first_: string, hours: number, lastGiven: LocalTime | null): Outcome<Start> {
  const { planned, discharged, zone } = asked;
  const at = first_.includes("T") ? first_ : nextShown(first_, discharged, zone);
  if (at <= discharged) {
    const values = { medicine: planned.name, given: written(at) };
    return { value: null, problems: [problem("first-before-discharge", asked.at("first"), values)] };
  }
  const clock = at.slice(11);
  const first = { at, slot: { at: clock, part: partOf(clock) } };
  const wait = lastGiven === null ? hours : hoursBetween(lastGiven, at, zone);
  if (wait >= hours * leastGap) return { value: { first, lastGiven }, problems: late(asked, at, hours, lastGiven) };
  const values = { medicine: planned.name, hours: oneDecimal(wait), least: oneDecimal(hours * leastGap), every: hours };
  return { value: { first, lastGiven }, problems: [problem("doses-too-close", asked.at("first"), values)] };
}

function late(asked: Asked, first: LocalTime, hours: number, lastGiven: LocalTime | null): Problem[] {
  if (lastGiven === null) return [];
  const wait = hoursBetween(lastGiven, first, asked.zone);
  if (wait <= hours * mostGap) return [];
  const values = { medicine: asked.planned.name, hours: oneDecimal(wait), every: hours, first: written(first) };
  return [problem("first-dose-late", asked.at("last given"), values)];
}

const onDay = (time: Clock | LocalTime, day: string): LocalTime => (time.includes("T") ? time : `${day}T${time}`);

function nextShown(clock: Clock, after: LocalTime, zone: string): LocalTime {
  const today = localTime(dayOf(after), clock, zone);
  return today > after ? today : localTime(dayAfter(dayOf(after), 1), clock, zone);
}

const written = (at: LocalTime) => at.replace("T", " ");
const oneDecimal = (hours: number) => String(Math.round(hours * 10) / 10);
