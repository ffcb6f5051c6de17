import { addDays, eachDayOfInterval, format, parseISO } from "date-fns";
import type { Plan } from "#plan/plan.js";
import { partsOfDay } from "../doses/slots.js";
import type { Ahead, Course, Day, Medicine } from "../facts.js";
import { clinicDays } from "./clinic-days.js";

/** How long after its last day a page may still say whether the clinic is open; common practice, no source. */
const knownDays = 60;

/** What a page that is read later must know of the clinic's days. */
export function aheadOf(plan: Plan, { ends }: Course, medicines: readonly Medicine[]): Ahead {
  const discharged = plan.discharged.slice(0, 10);
  const days = [discharged, ends?.latest ?? "", ...medicines.map(({ last }) => last?.slice(0, 10) ?? "")];
  const lastDay = days.toSorted().at(-1) ?? discharged;
  const knownTo = dayAfter(lastDay, knownDays);
  const on = clinicDays(plan);
  const shut = eachDayOfInterval({ start: parseISO(discharged), end: parseISO(knownTo) })
    .map((date) => format(date, "yyyy-MM-dd"))
    .filter((day) => {
      const { closed } = on(day);
      return closed !== null && closed.reason !== "weekly";
    });
  return { lastDay, knownTo, shut, parts: partsOfDay };
}

const dayAfter = (day: Day, count: number): Day => format(addDays(parseISO(day), count), "yyyy-MM-dd");
