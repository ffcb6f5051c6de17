import type { Day } from "../facts.js";

const msPerDay = 24 * 60 * 60 * 1000;

/** Days after discharge, which is day 0, as calendar days and back. In UTC, where every day is as long as the next. */
export const dayOf = (discharged: Day, number: number): Day =>
  new Date(Date.parse(discharged) + number * msPerDay).toISOString().slice(0, 10);
export const numberOf = (discharged: Day, day: Day): number => (Date.parse(day) - Date.parse(discharged)) / msPerDay;
