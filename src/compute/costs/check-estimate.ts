import type { Plan } from "#plan/plan.js";
import { placeOf } from "#problems/place.js";
import { type Problem, problem } from "#problems/problem.js";
import type { Estimate, Span } from "../facts.js";
import type { Off } from "./discounts.js";
import { mostMoney, toMinor } from "./money.js";

/**
 * Amounts no bill comes to, at the line they come from; more paid or asked for than it can cost; more taken off than there is.
 * Problems: "amount-too-large", "paid-over-estimate", "deposit-over-estimate", "discount-over-cost".
 */
export function checkEstimate(
  estimate: Estimate,
  { places }: Plan,
  discounts: readonly Off[],
  digits: number,
): Problem[] {
  const { lines, whole, paid, deposit, currency, from } = estimate;
  const money = (minor: number) => ({ minor, currency });
  const tooLarge = (amount: { total: Span }) => amount.total.high > mostMoney;
  const large = lines.filter(tooLarge);
  if (large.length > 0 || tooLarge({ total: whole }))
    return (large.length > 0 ? large : [{ from }]).map((one) =>
      problem("amount-too-large", one.from, { most: money(mostMoney) }),
    );

  const high = money(whole.high);
  return [
    ...(paid > whole.high
      ? [problem("paid-over-estimate", placeOf(places, "estimate", "paid"), { paid: money(paid), high })]
      : []),
    ...(deposit && deposit.asked > whole.high
      ? [problem("deposit-over-estimate", depositPlace(places), { deposit: money(deposit.asked), high })]
      : []),
    ...discounts.flatMap(({ off }, index) => {
      if ("percent" in off) return [];
      const written = toMinor(off.amount, digits);
      const taken = estimate.discounts[index]?.amount.high ?? 0;
      const at = placeOf(places, "estimate", "discounts", index, "off");
      return written > taken ? [problem("discount-over-cost", at, { off: money(written), cost: money(taken) })] : [];
    }),
  ];
}

/** The deposit of the plan, or else of the clinic. */
const depositPlace = (places: Plan["places"]) =>
  places["estimate/deposit"] ?? placeOf(places, "clinic", "estimate", "deposit");
