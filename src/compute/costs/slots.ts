import { addDays, differenceInCalendarDays, formatISO, parseISO } from "date-fns";
import type { Counts, Course, Day, LocalTime, Medicine, Visit } from "../facts.js";
import type { Item } from "./read-item.js";

/** What the estimate counts: visits and days come from the course, units from the medicines; nothing is entered twice. */
export type Countable = {
  discharged: LocalTime;
  course: Course;
  medicines: readonly Medicine[];
  /** The kind of collar the patient goes home with: "soft cone". */
  collar: string | null;
};

/** The shortest course, the likely one and the longest. */
export type End = "low" | "likely" | "high";

/** One time that an item is charged: when, at which visit if at one, and in which of the courses. */
export type Slot = { day: Day; visit: Visit | null; decision: string | null; in: Record<End, boolean> };

/**
 * Each time an item may be charged, the surest first. What is only a maybe ("if needed", "if done", or at a visit that waits
 * for a decision) is in the longest course alone; what somebody wrote as a maybe is there at least once.
 */
export function slotsOf(item: Item, counted: Countable): Slot[] {
  const decision = decisionOf(item, counted.course);
  const slots = placesOf(item, counted).map((slot) => ({ ...slot, decision: decision ?? slot.decision }));
  if (slots.length === 0 && item.when !== null) slots.push({ ...firstPlace(item, counted), decision });
  return slots.map((slot, index) => {
    if (item.when === null && slot.decision === null) return slot;
    return { ...slot, in: { low: false, likely: false, high: slot.in.high || (item.when !== null && index === 0) } };
  });
}

/** The decision an item waits for: the one that every visit of its kind waits for, or for "if done" the one its row names. */
export function decisionOf({ price: { visit }, when }: Item, { visits }: Course): string | null {
  if (visit === null) return null;
  const [first = null, ...others] = visitsFor(visit, visits).map(({ dependsOn }) => dependsOn);
  if (first !== null && others.every((decision) => decision === first)) return first;
  return when === "done" ? visit : null;
}

const always = { low: true, likely: true, high: true };

function placesOf(item: Item, counted: Countable): Slot[] {
  const { course, discharged } = counted;
  const { per, visit } = item.price;
  switch (per) {
    case "once":
      return [firstPlace(item, counted)];
    case "unit":
      return [{ day: discharged.slice(0, 10), visit: null, decision: null, in: always }];
    case "visit": {
      const counts = visit === null ? course.trips : course.purposes.find(({ kind }) => kind === visit)?.counts;
      return counts ? atVisits(visitsFor(visit, course.visits), counts, counted) : [];
    }
    case "day":
      return eachDay(daysOf(course, discharged), discharged);
  }
}

const visitsFor = (kind: string | null, visits: readonly Visit[]): Visit[] =>
  visits.filter(({ purposes }) => kind === null || purposes.some((purpose) => purpose.kind === kind));

/** Once is today; or at the first visit of the kind its row names; what is only a maybe, at the first visit there is. */
function firstPlace({ price, when }: Item, { course, discharged }: Countable): Slot {
  const later = price.visit !== null || when !== null;
  const [visit = null] = later ? visitsFor(price.visit, course.visits).toSorted(byDay) : [];
  const day = visit ? dayOf(visit) : discharged.slice(0, 10);
  return { day, visit, decision: visit?.dependsOn ?? null, in: always };
}

/** The day of a visit: agreed, or the one the course would choose. */
export const dayOf = ({ at, ideal }: Visit): Day => at?.slice(0, 10) ?? ideal;
const byDay = (a: Visit, b: Visit) => dayOf(a).localeCompare(dayOf(b));

/**
 * The visits that the counts of a course come to. Which of those that are only possible will happen is not known: the first
 * are taken, and of the longest course those that wait for a decision before the rest. One that the course has not placed
 * stands on its last day.
 */
function atVisits(
  visits: readonly Visit[],
  { fewest, likely, most }: Counts,
  { course, discharged }: Countable,
): Slot[] {
  const sure = ({ certainty }: Visit) => Number(certainty === "possible");
  const free = visits
    .filter(({ dependsOn }) => dependsOn === null)
    .toSorted((a, b) => sure(a) - sure(b) || byDay(a, b));
  const waiting = visits.filter(({ dependsOn }) => dependsOn !== null).toSorted(byDay);
  const unplaced = Array.from<null>({ length: Math.max(0, likely - free.length) }).fill(null);
  const taken = [...free.slice(0, likely), ...unplaced, ...waiting, ...free.slice(likely)];
  const end = course.ends?.latest ?? discharged.slice(0, 10);
  return Array.from({ length: Math.max(most, taken.length) }, (_, i): Slot => {
    const visit = taken[i] ?? null;
    return {
      day: visit ? dayOf(visit) : end,
      visit,
      decision: visit?.dependsOn ?? null,
      in: { low: i < fewest, likely: i < likely, high: i < most },
    };
  });
}

const eachDay = ({ fewest, likely, most }: Counts, discharged: LocalTime): Slot[] =>
  Array.from({ length: most }, (_, i) => ({
    day: formatISO(addDays(parseISO(discharged), i + 1), { representation: "date" }),
    visit: null,
    decision: null,
    in: { low: i < fewest, likely: i < likely, high: true },
  }));

/** Days after the day of discharge up to the last visit; the likely last is the last that is booked or expected. */
function daysOf({ ends: last, visits }: Course, discharged: LocalTime): Counts {
  if (!last) return { fewest: 0, likely: 0, most: 0 };
  const after = (day: Day) => Math.max(0, differenceInCalendarDays(parseISO(day), parseISO(discharged)));
  const fewest = after(last.earliest);
  const most = after(last.latest);
  const expected = visits.filter(({ certainty }) => certainty !== "possible").map(({ ideal }) => after(ideal));
  return { fewest, likely: Math.min(most, Math.max(fewest, ...expected)), most };
}
