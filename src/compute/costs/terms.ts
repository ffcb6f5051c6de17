import { addDays, formatISO, parseISO } from "date-fns";
import type { Decimal } from "decimal.js";
import type { Clinic } from "#plan/plan.js";
import type { Day, Estimate, LocalTime } from "../facts.js";
import { toldIn } from "../told.js";
import { exact, partOf } from "./money.js";

type Valid = NonNullable<NonNullable<Clinic["estimate"]>["valid"]>;
type Terms = Pick<Estimate, "validUntil" | "ringAbove" | "terms" | "excluded">;

/**
 * What the clinic says of its estimates; it promises nothing the clinic did not write. It rings before the bill passes the
 * high end by more than a share of it, or by more than an amount.
 */
export function termsOf({ estimate, language }: Clinic, discharged: LocalTime, high: number, digits: number): Terms {
  const margin = estimate?.["ring before passing"];
  return {
    validUntil: estimate?.valid ? lastDay(estimate.valid, discharged) : null,
    ringAbove: margin === undefined ? null : high + partOf(high, margin, digits),
    terms: estimate?.terms === undefined ? null : toldIn(estimate.terms, language),
    excluded: (estimate?.["not included"] ?? []).map((one) => toldIn(one, language)),
  };
}

/** The last day it holds, counted from the day of discharge; part of a day is left off. */
const lastDay = (valid: Valid, discharged: LocalTime): Day =>
  formatISO(addDays(parseISO(discharged), daysValid(valid).floor().toNumber()), { representation: "date" });

export const daysValid = ({ value, unit }: Valid): Decimal => exact(value).times(unit === "week" ? 7 : 1);
