import { differenceInCalendarDays, parseISO } from "date-fns";
import type { Plan } from "#plan/plan.js";
import { type Problem, problem } from "#problems/problem.js";
import type { MedicineRow } from "#tables/medicines.js";
import type { Asked } from "./asked.js";
import { dayOf } from "./clock.js";
import { namedIn } from "./find.js";

/** A medicine of the plan with the rows of the table that its name names. */
export type Named = { asked: Asked; rows: readonly MedicineRow[] };

/** Medicines that must not meet: with each other in this plan, and with what the animal takes or took a short while ago. */
export function pairProblems(plan: Plan, named: readonly Named[], table: readonly MedicineRow[]): Problem[] {
  const together = named.flatMap((one, i) => named.slice(0, i).flatMap((other) => meet(one, other)));
  const taken = named.flatMap((one) => plan.patient.takes.flatMap((text) => meetsTaken(one, text, plan, table)));
  return [...together, ...taken];
}

function meet(one: Named, other: Named): Problem[] {
  const medicine = one.asked.planned.name;
  if (one.rows[0] && one.rows[0] === other.rows[0])
    return [problem("medicine-twice", one.asked.at("name"), { medicine })];
  const rule = ruleBetween(one.rows, other.rows);
  if (!rule) return [];
  const values = { medicine, other: other.asked.planned.name, source: rule.source };
  return [problem("never-together", one.asked.at("name"), values)];
}

/** "prednisolone until 2026-02-27" was taken until then; without a day it is taken still. */
function meetsTaken({ asked, rows }: Named, text: string, plan: Plan, table: readonly MedicineRow[]): Problem[] {
  const taken = namedIn(text, table);
  const medicine = asked.planned.name;
  const [, ended] = /\b(?:until|stopped|ended) (\d{4}-\d{2}-\d{2})$/.exec(text.trim()) ?? [];
  if (ended === undefined && rows[0] && rows[0] === taken[0])
    return [problem("medicine-twice", asked.at("name"), { medicine })];
  const rule = ruleBetween(rows, taken);
  if (!rule) return [];
  if (ended === undefined)
    return [problem("never-together", asked.at("name"), { medicine, other: text, source: rule.source })];
  const since = differenceInCalendarDays(parseISO(dayOf(plan.discharged)), parseISO(ended));
  if (rule.days === null || since >= rule.days) return [];
  const values = { medicine, other: text, ended: { day: ended }, days: rule.days, source: rule.source };
  return [problem("too-soon-after", asked.at("name"), values)];
}

/** The rule that keeps two apart: the one with the first that waits longest after the other, else the one with the other. */
function ruleBetween(some: readonly MedicineRow[], others: readonly MedicineRow[]) {
  const longest = (of: readonly MedicineRow[], against: readonly MedicineRow[]) => {
    const families = new Set(against.flatMap(({ id, groups }) => [id, ...groups.map((group) => group.id)]));
    const rules = of.flatMap(({ notWith }) => notWith).filter(({ id }) => families.has(id));
    return rules.toSorted((one, two) => (two.days ?? 0) - (one.days ?? 0))[0];
  };
  return longest(some, others) ?? longest(others, some);
}
