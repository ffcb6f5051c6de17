import { addDays, differenceInCalendarDays, format, parseISO } from "date-fns";
import type { Day } from "../facts.js";

/** Days after discharge, which is day 0, as calendar days and back. */
export const dayOf = (discharged: Day, number: number): Day =>
  format(addDays(parseISO(discharged), number), "yyyy-MM-dd");
export const numberOf = (discharged: Day, day: Day): number =>
  differenceInCalendarDays(parseISO(day), parseISO(discharged));
