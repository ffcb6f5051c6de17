import type { Plan } from "#plan/plan.js";
import type { Clinic } from "./facts.js";

const weekdays = ["monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday"] as const;

/** The week's hours, with neighbouring days of the same hours told as one stretch. */
export function openingHours(week: Plan["clinic"]["hours"]): Clinic["hours"] {
  const stretches: Clinic["hours"] = [];
  weekdays.forEach((name, i) => {
    const last = stretches.at(-1);
    if (last && JSON.stringify(last.hours) === JSON.stringify(week[name])) last.to = i + 1;
    else stretches.push({ from: i + 1, to: i + 1, hours: week[name] });
  });
  return stretches;
}
