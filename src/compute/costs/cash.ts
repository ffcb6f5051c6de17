import type { Clinic } from "#plan/plan.js";
import type { CashRounding } from "#tables/cash.js";
import type { Estimate, Span } from "../facts.js";
import { exact, roundHalfUp } from "./money.js";
import { mapSpan } from "./span.js";

/** The whole and the balance as they are paid in cash, where the clinic's country rounds cash. */
export function inCash(
  rules: readonly CashRounding[],
  { country, currency }: Clinic,
  { total, balance }: { total: Span; balance: Span },
): Estimate["cash"] {
  const rule = rules.find((row) => row.country === country && row.currency === currency);
  if (!rule) return null;
  const rounded = (span: Span) => mapSpan(span, (amount) => toStep(amount, rule));
  return { step: rule.step, total: rounded(total), balance: rounded(balance) };
}

/** The nearest amount that coins can pay; what is less than the rule begins at stays as it is. */
export const toStep = (amount: number, { step, from }: Pick<CashRounding, "step" | "from">): number =>
  amount < from ? amount : roundHalfUp(exact(amount).div(step)) * step;
