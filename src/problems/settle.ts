import type { Problem } from "./problem.js";

/** Why the clinician goes on where the tool asks. */
export type Reason = { problem: string; reason: string };
export type Settled = {
  /** What still stands in the way: all that stops, and all that asks and has no reason. */
  open: Problem[];
  /** What was asked and answered, for the record. */
  allowed: { problem: Problem; reason: string }[];
  notes: Problem[];
};

/** Sorts problems by what they mean for a build. A reason answers what asks; nothing answers what stops. */
export function settle(problems: readonly Problem[], reasons: readonly Reason[]): Settled {
  const settled: Settled = { open: [], allowed: [], notes: [] };
  for (const problem of problems) {
    const reason = reasons.find((given) => given.problem === problem.code && given.reason.trim() !== "")?.reason;
    if (problem.severity === "note") settled.notes.push(problem);
    else if (problem.severity === "ask" && reason) settled.allowed.push({ problem, reason });
    else settled.open.push(problem);
  }
  return settled;
}
