import { eachDayOfInterval, formatISO, getISODay, parseISO } from "date-fns";
import type { Plan } from "#plan/plan.js";
import { clinicDays } from "../calendar/clinic-days.js";
import type { Clock, Day, Span, Visit } from "../facts.js";
import { partOf } from "./money.js";
import type { Price } from "./price-list.js";
import { mapSpan } from "./span.js";

const weekdays = ["monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday"] as const;

/** What one of a row costs at a visit. */
export type PriceAt = (price: Price, visit: Visit | null) => Span;

/**
 * Prices at the time of a visit. A booked visit has its time; after hours is any time nobody is there. A visit
 * that is not booked will be in hours, on one of its days: it may cost what the cheapest of them does, or the dearest, and
 * is likely to cost what the ideal day does.
 */
export function pricesByTime(plan: Plan, digits: number): PriceAt {
  const dayAt = clinicDays(plan);

  const fits = (when: Price["byTime"][number]["when"], day: Day, clock: Clock | null): boolean => {
    if (when === "weekend") return plan.clinic.weekend.includes(weekdays[getISODay(parseISO(day)) - 1] ?? "sunday");
    if (clock === null) return false;
    return !dayAt(day).hours.some(({ open, close }) => open <= clock && clock < close);
  };

  const on = ({ unit, byTime }: Price, day: Day, clock: Clock | null): Span => {
    const band = byTime.find(({ when }) => fits(when, day, clock));
    return band ? mapSpan(unit, (amount) => amount + partOf(amount, band.more, digits)) : unit;
  };

  const daysOf = ({ earliest, latest }: Visit): Day[] => {
    const all = eachDayOfInterval({ start: parseISO(earliest), end: parseISO(latest) }).map((day) =>
      formatISO(day, { representation: "date" }),
    );
    const open = all.filter((day) => dayAt(day).hours.length > 0);
    return open.length > 0 ? open : all;
  };

  return (price, visit) => {
    if (!visit || price.byTime.length === 0) return price.unit;
    if (visit.at !== null) return on(price, visit.at.slice(0, 10), visit.at.slice(11));
    const spans = [visit.ideal, ...daysOf(visit)].map((day) => on(price, day, null));
    return {
      low: Math.min(...spans.map(({ low }) => low)),
      likely: on(price, visit.ideal, null).likely,
      high: Math.max(...spans.map(({ high }) => high)),
    };
  };
}
