import { Decimal } from "decimal.js";
import type { Plan, VisitEntry } from "#plan/plan.js";
import { placeOf } from "#problems/place.js";
import { type Problem, problem } from "#problems/problem.js";
import type { Facts } from "../facts.js";

/** How far the weight may change before every dose is looked at again, in percent. From memory: common practice, no source. */
export const weightShare = 10;

const amounts = ["none", "little", "moderate", "much"];
const grams = { kg: "1000", lb: "453.59237" };

/** Where what was entered does not fit what was known: each needs a reason, or another look. */
export function doesNotFit(
  plan: Plan,
  facts: Facts,
  entry: VisitEntry,
  { was, missed }: { was: readonly string[]; missed: readonly string[] },
): Problem[] {
  const at = placeOf(plan.places);
  const day = entry.at.slice(0, 10);
  const skipped = plan.booked.filter((one) => one.slice(0, 10) < day && one > plan.discharged);
  return [
    ...skipped.map((one) => problem("revise-booked-skipped", at, { day: { day: one.slice(0, 10) } })),
    ...missed.map((visit) => problem("revise-visit-missed", at, { visit })),
    ...(entry.decided === "close" && !was.includes("closure") ? [problem("revise-not-closed", at, {})] : []),
    ...(entry.decided !== "close" && was.includes("closure") ? [problem("revise-closed-open", at, {})] : []),
    ...(entry.decided === "drain out" && !was.includes("drain-removal") ? [problem("revise-drain-in", at, {})] : []),
    ...dischargeRises(plan, entry).map((amount) => problem("revise-discharge-rises", at, { amount })),
    ...weightChanged(plan, entry).map((percent) =>
      problem("revise-weight-changed", at, {
        percent,
        share: weightShare,
        medicines: facts.medicines.map(({ name }) => name),
      }),
    ),
    ...ranOut(facts, entry).map((medicine) => problem("revise-ran-out", at, { medicine })),
  ];
}

/** It rose at this visit and at the one before. */
function dischargeRises({ done }: Plan, { seen }: VisitEntry): string[] {
  const [first, second, third] = [...done.slice(-2).map((visit) => visit.seen?.discharge), seen?.discharge].map(
    (word) => amounts.indexOf(word ?? ""),
  );
  if (first === undefined || second === undefined || third === undefined || first < 0) return [];
  return first < second && second < third ? [amounts[third] ?? ""] : [];
}

function weightChanged({ patient }: Plan, { weight }: VisitEntry): string[] {
  if (!weight) return [];
  const inGrams = (one: typeof weight) => new Decimal(one.value).times(grams[one.unit]);
  const percent = inGrams(weight).minus(inGrams(patient.weight)).div(inGrams(patient.weight)).times(100);
  return percent.abs().gt(weightShare) ? [percent.toFixed(0)] : [];
}

/** Nothing of it is left though doses are still to come. */
const ranOut = ({ medicines }: Facts, { left, at }: VisitEntry): string[] =>
  Object.entries(left).flatMap(([name, amount]) => {
    const medicine = medicines.find((one) => one.name.toLowerCase() === name.toLowerCase());
    const due = medicine?.doses.some((dose) => dose.at > at) ?? false;
    return due && Number.parseFloat(amount) === 0 ? [name] : [];
  });
