import { differenceInCalendarDays, parseISO } from "date-fns";
import type { Edit, Plan, VisitEntry } from "#plan/plan.js";
import { placeOf } from "#problems/place.js";
import { type Outcome, type Problem, problem, stops } from "#problems/problem.js";
import type { Topic } from "#tables/topic.js";
import type { VisitKind } from "#tables/visits.js";
import { caseNumber } from "../case-id.js";
import type { Facts, Visit } from "../facts.js";
import { doneCounts, kindNamed } from "../visits/done.js";
import { parseLine } from "../visits/language/parse-line.js";
import { readLines } from "../visits/read-lines.js";
import { careEdits } from "./care-edits.js";
import type { Turn } from "./course-lines.js";
import { doesNotFit } from "./does-not-fit.js";
import { medicineEdits } from "./medicine-edits.js";
import { moneyEdits } from "./money-edits.js";

/**
 * The changes that make the next revision of a plan from a visit: the visit is kept in it, and the course, the medicines and
 * the money go on from there. facts: those of the plan as it stands. The plan itself is not changed.
 */
export function revise(
  plan: Plan,
  facts: Facts,
  entry: VisitEntry,
  kinds: readonly VisitKind[],
  topics: readonly Topic[],
): Outcome<Edit[]> {
  const at = placeOf(plan.places);
  const unknown = entry.visit.filter((words) => !kindNamed(words, kinds));
  const problems: Problem[] = unknown.map((given) =>
    problem("revise-visit-unknown", at, { given, known: kinds.map(({ words: [name = ""] }) => name) }),
  );
  if (entry.at <= plan.discharged)
    problems.push(
      problem("revise-not-after", at, { given: entry.at.replace("T", " "), before: plan.discharged.replace("T", " ") }),
    );
  const gap = entry.every === undefined ? null : gapOf(entry.every, kinds);
  if (entry.every !== undefined && !gap) problems.push(problem("revise-gap-unreadable", at, { given: entry.every }));
  if (stops(problems)) return { value: null, problems };

  const was = entry.visit.flatMap((words) => kindNamed(words, kinds)?.id ?? []);
  const elapsed = differenceInCalendarDays(parseISO(entry.at), parseISO(plan.discharged));
  const turn: Turn = { elapsed, was, ago: agoOf(plan, entry, kinds), decided: entry.decided, gap };
  const { lines } = readLines(plan, kinds);
  const care = careEdits(plan, facts, entry, turn, lines, topics);
  if (!care.value) return { value: null, problems: [...problems, ...care.problems] };
  const { courses, missed } = care.value;
  problems.push(...doesNotFit(plan, facts, entry, { was, missed }), ...care.problems);

  const booked = [...plan.booked.filter((one) => one > entry.at), ...entry.booked].toSorted();
  const medicines = medicineEdits(plan, facts, entry);
  const money = moneyEdits(plan, facts, entry, {
    visit: visitOf(plan, facts, was, kinds),
    over: courses.flat().length + booked.length === 0,
  });
  problems.push(...medicines.problems, ...money.problems);
  const edits: Edit[] = [
    { path: ["revision"], value: String(plan.revision + 1) },
    ...(plan.case ? [] : [{ path: ["case"], value: caseNumber(plan) }]),
    { path: ["discharged"], value: spaced(entry.at) },
    { path: ["done"], value: [...plan.done, entry].map(visitText) },
    ...(entry.reason === undefined ? [] : [{ path: ["reason"], value: entry.reason }]),
    ...care.value.edits,
    {
      path: ["booked"],
      value: booked.map(spaced),
    },
    ...(entry.weight ? [{ path: ["patient", "weight"], value: amount(entry.weight) }] : []),
    ...collarEdits(plan, entry),
    ...(money.value ?? []),
    ...(medicines.value ?? []),
  ];
  return { value: stops(problems) ? null : edits, problems };
}

const spaced = (at: string): string => at.replace("T", " ");
const amount = ({ value, unit }: { value: string; unit: string }): string => `${value} ${unit}`;

/** "2-3 days", as a course line would say it. */
function gapOf(every: string, kinds: readonly VisitKind[]): Turn["gap"] {
  const at = { file: "visit", line: 1, column: 1, length: 1 };
  const days = /^\d/.test(every) && !/[a-z]/i.test(every) ? `${every} days` : every;
  const line = parseLine(`recheck every ${days} 1 times`, 0, at, {
    kinds,
    discharged: "2000-01-01",
    going: null,
  }).value;
  return line?.repeats ? line.gap.value : null;
}

/** How many days before a visit the last one of each kind was. */
function agoOf({ done }: Plan, entry: VisitEntry, kinds: readonly VisitKind[]): Turn["ago"] {
  const ago = ({ at }: { at: string }) => differenceInCalendarDays(parseISO(entry.at), parseISO(at));
  const visits = [...done, entry].toSorted((a, b) => ago(b) - ago(a));
  return new Map(
    visits.flatMap((one) =>
      one.visit.flatMap((words): [string, number][] => {
        const kind = kindNamed(words, kinds);
        return kind ? [[kind.id, ago(one)]] : [];
      }),
    ),
  );
}

/** The visit as the plan keeps it. */
function visitText(visit: Plan["done"][number]) {
  const { at, visit: was, seen, did, decided, weight, paid } = visit;
  const looked = Object.entries(seen ?? {}).filter(([, value]) => value !== undefined && value.length > 0);
  return {
    at: spaced(at),
    visit: was,
    ...(looked.length > 0 ? { seen: Object.fromEntries(looked) } : {}),
    ...(did.length > 0 ? { did } : {}),
    decided,
    ...(weight ? { weight: amount(weight) } : {}),
    ...(paid === undefined ? {} : { paid }),
  };
}

/** The visit of the course that this was: the next of its kind. */
function visitOf(
  { done }: Plan,
  { course }: Facts,
  [kind]: readonly string[],
  kinds: readonly VisitKind[],
): Visit | null {
  const before = new Map(doneCounts(done, kinds)).get(kind ?? "") ?? 0;
  const fits = ({ purposes }: Visit) => purposes.some((one) => one.kind === kind && one.number === before + 1);
  return course.visits.find(fits) ?? null;
}

function collarEdits({ collar, discharged }: Plan, entry: VisitEntry): Edit[] {
  const until = entry["collar until"] ?? collar?.until;
  if (!collar || until === undefined) return [];
  const over =
    until === "off" || (/^\d{4}-/.test(until) && until <= entry.at.slice(0, 10) && until > discharged.slice(0, 10));
  return over ? [{ path: ["collar"] }] : [{ path: ["collar", "until"], value: until }];
}
