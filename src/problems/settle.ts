import type { Value } from "./kind.js";
import { namesOf, type Problem } from "./problem.js";

/** Why the clinician goes on where the tool asks. for: what the reason is given for, as `subjectOf` words it. */
export type Reason = { problem: string; for?: string | undefined; reason: string };
export type Settled = {
  /** What still stands in the way: all that stops, and all that asks and has no reason. */
  open: Problem[];
  /** What was asked and answered, for the record. */
  allowed: { problem: Problem; reason: string }[];
  notes: Problem[];
};

/**
 * Sorts problems by what they mean for a build. A reason answers what asks; nothing answers what stops. One reason never
 * answers for two things: it must say for what wherever the problem's kind names it, or several have its code.
 */
export function settle(problems: readonly Problem[], reasons: readonly Reason[]): Settled {
  const settled: Settled = { open: [], allowed: [], notes: [] };
  for (const problem of problems) {
    const subject = subjectOf(problem, problems);
    const reason = reasons.find((given) => answers(given, problem, subject))?.reason;
    if (problem.severity === "note") settled.notes.push(problem);
    else if (problem.severity === "ask" && reason) settled.allowed.push({ problem, reason });
    else settled.open.push(problem);
  }
  return settled;
}

/**
 * What a reason must be given for: "carprofen, 44 mg/kg". Null where the code alone says it, because no other problem
 * has it. What is the same in all of its values is one problem, however often it is told.
 */
export function subjectOf(problem: Problem, among: readonly Problem[]): string | null {
  const values: Record<string, Value> = problem.values;
  const named = namesOf(problem.code).map((name) => textOf(values[name] ?? ""));
  if (named.length > 0) return named.join(", ");
  const several = new Set(among.filter(({ code }) => code === problem.code).map(valuesOf));
  return several.size > 1 ? valuesOf(problem) : null;
}

function answers(given: Reason, problem: Problem, subject: string | null): boolean {
  if (given.problem !== problem.code || given.reason.trim() === "") return false;
  return given.for === undefined ? subject === null : same(given.for, subject ?? valuesOf(problem));
}

const valuesOf = ({ values }: Problem): string => Object.values(values).map(textOf).join(", ");

function textOf(value: Value): string {
  if (typeof value === "string" || typeof value === "number") return String(value);
  if ("day" in value) return value.day;
  return "minor" in value ? `${value.minor} ${value.currency}` : value.join(" ");
}

const simple = (text: string) => text.trim().replace(/\s+/g, " ").toLowerCase();
const same = (one: string, other: string) => simple(one) === simple(other);
