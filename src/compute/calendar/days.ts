import type { Day } from "../facts.js";

export const weekdays = ["monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday"] as const;

/** 1 Monday - 7 Sunday. */
export const weekdayOf = (day: Day): number => new Date(day).getUTCDay() || 7;

/** Days off as a profile writes them: one day, or from a day to a day, perhaps with a name. */
export const dateRange = (
  written: string | { from: Day; to: Day; name?: string | undefined },
): { from: Day; to: Day; name: string | null } =>
  typeof written === "string" ? { from: written, to: written, name: null } : { ...written, name: written.name ?? null };
