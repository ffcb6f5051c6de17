import { Decimal } from "decimal.js";
import type { Edit, Plan, VisitEntry } from "#plan/plan.js";
import { placeOf } from "#problems/place.js";
import { type Outcome, type Problem, problem } from "#problems/problem.js";
import type { Facts, Medicine } from "../facts.js";

/**
 * The medicines from the day of a visit on: those that go on keep the day they began and the amount they are given in, so
 * that a new weight changes no dose by itself; what is left in the house is as it was counted; some stop, change or begin.
 */
export function medicineEdits(plan: Plan, facts: Facts, entry: VisitEntry): Outcome<Edit[]> {
  const same = (name: string) => (other: { name: string }) => other.name.toLowerCase() === name.toLowerCase();
  const named = [...entry.stop, ...Object.keys(entry.left)];
  const problems: Problem[] = named
    .filter((name) => !plan.medicines.some(same(name)))
    .map((given) =>
      problem("revise-medicine-unknown", placeOf(plan.places, "medicines"), {
        given,
        known: plan.medicines.map(({ name }) => name),
      }),
    );
  const edits: Edit[] = [];
  for (const [i, { name, started, dose }] of plan.medicines.entries()) {
    const at = (field: string) => ["medicines", i, field];
    const change = entry.medicines.find(same(name));
    const counted = Object.entries(entry.left).find(([given]) => same(given)({ name }))?.[1];
    const left = counted ?? countedBefore(plan.medicines[i], facts.medicines.find(same(name)), entry.at);
    edits.push({ path: at("left"), ...(left === undefined ? {} : { value: left }) });
    if (change) {
      for (const [field, value] of Object.entries(change)) edits.push({ path: at(field), value });
      if ("give" in change) edits.push({ path: at("dose") });
      if ("dose" in change) edits.push({ path: at("give") });
      // What went home and when it was to end were those of the course before.
      const over = ["dispense", "until"].filter((field) => !(field in change));
      edits.push(...["started", ...over].map((field) => ({ path: at(field) })));
      continue;
    }
    edits.push({ path: at("started"), value: (started ?? plan.discharged).replace("T", " ") });
    const give = facts.medicines.find(same(name))?.give;
    if (entry.weight && dose && give) edits.push({ path: at("dose") }, { path: at("give"), value: written(give) });
  }
  const begun = entry.medicines.filter(({ name }) => !plan.medicines.some(same(name)));
  begun.forEach((medicine, n) => {
    edits.push({ path: ["medicines", plan.medicines.length + n], value: medicine });
  });
  // From the last to the first, so that none moves before its turn.
  const over = plan.medicines.flatMap(({ name }, i) =>
    entry.stop.some((stopped) => same(stopped)({ name })) || isGiven(facts, name, entry.at) ? i : [],
  );
  for (const i of over.toReversed()) edits.push({ path: ["medicines", i] });
  return { value: edits, problems };
}

/** What was counted at an earlier visit, less the doses that were due since. */
function countedBefore(
  planned: Plan["medicines"][number] | undefined,
  medicine: Medicine | undefined,
  now: string,
): string | undefined {
  if (!planned?.left || !medicine) return undefined;
  if (medicine.give.unit !== planned.left.unit) return written(planned.left);
  const given = medicine.doses.filter(({ at }) => at <= now).map(({ give }) => give.value);
  const value = given.reduce((left, dose) => left.minus(dose), new Decimal(medicine.dispense.value));
  return written({ value: Decimal.max(0, value).toFixed(), unit: planned.left.unit });
}

/** Its last dose was due before the visit. */
const isGiven = ({ medicines }: Facts, name: string, now: string): boolean => {
  const medicine = medicines.find((one) => one.name.toLowerCase() === name.toLowerCase());
  return !medicine || (medicine.asNeededMost === null && medicine.last !== null && medicine.last <= now);
};

const written = ({ value, unit }: { value: string; unit: string }): string => `${value} ${unit}`;
