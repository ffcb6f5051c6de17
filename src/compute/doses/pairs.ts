import { differenceInCalendarDays, parseISO } from "date-fns";
import type { Plan } from "#plan/plan.js";
import { type Problem, problem } from "#problems/problem.js";
import type { MedicineRow } from "#tables/medicines.js";
import type { Asked } from "./asked.js";
import { dayOf } from "./clock.js";
import { namedIn } from "./find.js";

/** A medicine of the plan with the rows of the table that its name names. */
export type Named = { asked: Asked; rows: Rows };
type Rows = readonly MedicineRow[];

/** Medicines that must not meet: with each other in this plan, and with what the animal takes or took a short while ago. */
export function pairProblems(plan: Plan, named: readonly Named[], table: Rows): Problem[] {
  const together = named.flatMap((one, i) =>
    named.slice(0, i).flatMap(({ asked, rows }) => meets(one, asked.planned.name, rows)),
  );
  const taken = named.flatMap((one) => plan.patient.takes.flatMap((text) => meetsTaken(one, text, plan, table)));
  return [...together, ...taken];
}

/** A medicine that is given while another is, by whatever that is called and what of the table is in it. */
function meets({ asked, rows }: Named, other: string, others: Rows): Problem[] {
  const medicine = asked.planned.name;
  const at = asked.at("name");
  const rule = ruleBetween(...apart(rows, others));
  return [
    ...(share(rows, others) ? [problem("medicine-twice", at, { medicine })] : []),
    ...(rule ? [problem("never-together", at, { medicine, other, source: rule.source })] : []),
  ];
}

/** "prednisolone until 2026-02-27" was taken until then; without a day, or with one to come, it is taken still. */
function meetsTaken(one: Named, text: string, plan: Plan, table: Rows): Problem[] {
  const taken = namedIn(text, table);
  const today = dayOf(plan.discharged);
  const [, until] = /\b(?:until|stopped|ended) (\d{4}-\d{2}-\d{2})$/.exec(text.trim()) ?? [];
  if (until === undefined || until > today) return meets(one, text, taken);
  const rule = ruleBetween(one.rows, taken);
  const since = differenceInCalendarDays(parseISO(today), parseISO(until));
  if (!rule || rule.days === null || since >= rule.days) return [];
  const { asked } = one;
  const values = { other: text, ended: { day: until }, days: rule.days, source: rule.source };
  return [problem("too-soon-after", asked.at("name"), { medicine: asked.planned.name, ...values })];
}

/** Whether one substance is in both: "tramadol with paracetamol" and "tramadol". */
const share = (some: Rows, others: Rows): boolean => some.some((row) => others.includes(row));

/** The substances of each that are not in the other. */
const apart = (some: Rows, others: Rows): [Rows, Rows] => [
  some.filter((row) => !others.includes(row)),
  others.filter((row) => !some.includes(row)),
];

/** The rule that keeps two apart: the one with the first that waits longest after the other, else the one with the other. */
function ruleBetween(some: Rows, others: Rows) {
  const longest = (of: Rows, against: Rows) => {
    const families = new Set(against.flatMap(({ id, groups }) => [id, ...groups.map((group) => group.id)]));
    const rules = of.flatMap(({ notWith }) => notWith).filter(({ id }) => families.has(id));
    return rules.toSorted((one, two) => (two.days ?? 0) - (one.days ?? 0))[0];
  };
  return longest(some, others) ?? longest(others, some);
}
