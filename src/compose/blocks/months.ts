import {
  addDays,
  eachMonthOfInterval,
  eachWeekOfInterval,
  format,
  type Interval,
  isSameMonth,
  lastDayOfMonth,
  max,
  min,
  parseISO,
} from "date-fns";
import type { Day, Visit } from "#compute/facts.js";
import type { Block, DayMark, Month, MonthDay } from "#handout/handout.js";
import { type Page, plainOn } from "../page.js";
import { courseDays, dayMarks, type Mark, markOrder } from "./day-marks.js";

const isoDay = (date: Date): Day => format(date, "yyyy-MM-dd");

/** So few days stand whole in the strip of the course, and need no grid besides. */
const fewDays = 7;

/** A grid for each month the course touches, of the weeks it touches; the marks are told once, under the last. */
export function monthsOn(page: Page): Block[] {
  const days = courseDays(page.view);
  const marks = dayMarks(page.view);
  const [first, last] = [days[0], days.at(-1)];
  if (!first || !last || days.length <= fewDays) return [];
  const span = { start: parseISO(first), end: parseISO(last) };
  const months = eachMonthOfInterval(span).map((month) => monthOn(page, month, span, marks));
  const legend = legendOf(page, new Set([...marks.values()].flat()));
  return months.map((month, index) => (index < months.length - 1 ? month : { ...month, legend }));
}

function monthOn(page: Page, month: Date, course: Interval<Date, Date>, marks: Map<Day, Mark[]>): Month {
  const { voice } = page;
  // date-fns counts the days of the week from 0, Sunday; a locale from 1, Monday.
  const weekStartsOn = (voice.weekStart % 7) as 0 | 1 | 2 | 3 | 4 | 5 | 6;
  const [start, end] = [max([month, course.start]), min([lastDayOfMonth(month), course.end])];
  const weeks = eachWeekOfInterval({ start, end }, { weekStartsOn });
  const iso = format(month, "yyyy-MM");
  const shown = weeks.map((week) => Array.from({ length: 7 }, (_, i) => dayOn(page, addDays(week, i), month, marks)));
  return {
    kind: "month",
    iso,
    title: voice.capital(voice.month(iso)),
    weekdays: Array.from({ length: 7 }, (_, i) => ((voice.weekStart + i - 1) % 7) + 1).map((number) => ({
      short: voice.weekdayInColumn(number),
      long: voice.weekday(number, "long"),
    })),
    weeks: shown,
    legend: [],
  };
}

const legendOf = (page: Page, used: ReadonlySet<Mark>): DayMark[] =>
  markOrder.filter((mark) => used.has(mark)).map((mark) => ({ mark, text: plainOn(page, `calendar:legend.${mark}`) }));

function dayOn(page: Page, date: Date, month: Date, all: Map<Day, Mark[]>): MonthDay {
  const iso = isoDay(date);
  const inMonth = isSameMonth(date, month);
  const marks = inMonth ? (all.get(iso) ?? []).map((mark) => markOn(page, mark, iso)) : [];
  return { iso, text: page.voice.dayNumber(iso), label: page.voice.day(iso), inMonth, marks };
}

/** A booked day says the time; the others what they are. */
function markOn(page: Page, mark: Mark, day: Day): DayMark {
  const booked = mark === "booked" ? page.view.course.visits.find((visit) => isBookedOn(visit, day)) : undefined;
  return booked?.at
    ? { mark, text: plainOn(page, "calendar:mark.booked", { time: page.voice.time(booked.at.slice(11)) }) }
    : { mark, text: plainOn(page, `calendar:legend.${mark}`) };
}

const isBookedOn = ({ certainty, at }: Visit, day: Day) => certainty === "booked" && at?.startsWith(day);
