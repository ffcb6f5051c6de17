import type { Clock, DayPart } from "../facts.js";
import type { Every } from "./every.js";

/** A time of day at which a household gives medicines. */
export type Slot = { at: Clock; part: DayPart };
export type Household = { morning: Clock; evening: Clock };

/** Where nobody has said when the household gives medicines; common practice, no source. */
export const usualHousehold: Household = { morning: "08:00", evening: "20:00" };

/** A dose may come this share of its interval after the one before; common practice, no source. */
const gap = { least: 3 / 4, most: 5 / 4 };
/** People go to bed three hours after the evening's medicines, and before midnight; common practice, no source. */
const bedtime = (evening: number) => Math.min(evening + 180, 23 * 60 + 30);

/** Times between the household's own stand on a half hour, or, where that brings two of them too near, on any minute. */
const grids = [30, 1];

/**
 * The times of day for a medicine. Once a day may be morning or evening, whichever suits the first dose. More often, the
 * household's waking hours are shared out; where "every 8 h" or less does not fit into them, the day is cut evenly from the
 * household's morning, nights included. even: false where morning and evening lie too far from 12 h apart for two doses.
 */
export function slotsFor(every: Every, household: Household): { slots: Slot[]; even: boolean } {
  const morning: Slot = { at: household.morning, part: "morning" };
  const evening: Slot = { at: household.evening, part: "evening" };
  if (every.at) return { slots: [every.at === "morning" ? morning : evening], even: true };
  if (every.hours >= 24) return { slots: [morning, evening], even: true };

  const shared =
    every.hours === 12 ? [[morning, evening]] : grids.map((grid) => wakingHours(every, morning.at, evening.at, grid));
  const waking = shared.find((slots) => fits(slots, every));
  if (waking) return { slots: waking, even: true };
  return { slots: roundTheClock(every.hours, minutes(morning.at)), even: every.hours !== 12 };
}

/** Three times a day ends with the evening's medicines; what is due more often, or evenly, ends at bedtime. */
function wakingHours({ hours, by }: Every, from: Clock, to: Clock, grid: number): Slot[] {
  const toBed = by === "hours" || hours < 8;
  const [morning, evening] = [minutes(from), minutes(to)];
  const step = ((toBed ? bedtime(evening) : evening) - morning) / (24 / hours - 1);
  return Array.from({ length: 24 / hours }, (_, i) => {
    const time = morning + step * i;
    if (i === 0) return { at: clock(time), part: "morning" };
    if (i === 24 / hours - 1) return { at: clock(time), part: toBed ? "bedtime" : "evening" };
    return slotAt(Math.round(time / grid) * grid);
  });
}

const roundTheClock = (hours: number, morning: number): Slot[] =>
  Array.from({ length: 24 / hours }, (_, i) =>
    i === 0 ? { at: clock(morning), part: "morning" } : slotAt(morning + i * hours * 60),
  );

function fits(slots: Slot[], { hours, by }: Every): boolean {
  const times = slots.map(({ at }) => minutes(at));
  const gaps = times.map((time, i) => (times[i + 1] ?? (times[0] ?? 0) + 24 * 60) - time);
  const interval = hours * 60;
  return gaps.every((wait) => wait >= interval * gap.least && (by === "times" || wait <= interval * gap.most));
}

const slotAt = (time: number): Slot => ({ at: clock(time), part: partOf(clock(time)) });

/** When each part of the day begins; the last lasts into the night. Common practice, no source. */
export const partsOfDay: { part: DayPart; from: Clock }[] = [
  { part: "morning", from: "05:00" },
  { part: "midday", from: "11:00" },
  { part: "evening", from: "17:00" },
  { part: "bedtime", from: "21:00" },
];

/** The part of the day that a time belongs to. */
export const partOf = (at: Clock): DayPart => partsOfDay.findLast(({ from }) => from <= at)?.part ?? "bedtime";

const minutes = (at: Clock): number => Number(at.slice(0, 2)) * 60 + Number(at.slice(3));
const clock = (time: number): Clock =>
  [Math.floor(time / 60) % 24, time % 60].map((part) => String(part).padStart(2, "0")).join(":");
