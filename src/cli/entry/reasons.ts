import { type Problem, problem } from "#problems/problem.js";
import { type Reason, settle, subjectOf } from "#problems/settle.js";
import { askLine } from "./ask.js";
import type { Asked } from "./plan-draft.js";

const at = { file: "", line: 1, column: 1, length: 1 };

/** What asks for a reason, each once, with the reason a flag gives it. */
export function asksOf(problems: readonly Problem[], given: readonly Reason[]): (Asked & { about: Problem })[] {
  const { open, allowed } = settle(problems, given);
  const all = [...open, ...allowed.map(({ problem }) => problem)].filter(({ severity }) => severity === "ask");
  const asks = all.map((about) => ({
    about,
    problem: about.code,
    for: subjectOf(about, all),
    reason: allowed.find(({ problem }) => problem === about)?.reason ?? "",
  }));
  return asks.filter(
    (one, i) => i === asks.findIndex((other) => one.problem === other.problem && one.for === other.for),
  );
}

/**
 * Asks for the reasons that are still missing, one by one; an empty line leaves one for later. faultOf: what the plan would
 * say of them. null: they have had enough.
 */
export async function askReasons<A extends Asked & { about: Problem }>(
  asks: readonly A[],
  faultOf: (asks: readonly A[]) => Problem | undefined,
  say: (found: Problem) => string,
): Promise<readonly A[] | null> {
  const told = [...asks];
  for (const [i, ask] of asks.entries()) {
    if (ask.reason !== "") continue;
    const reason = await askLine(`${say(ask.about)} ${say(problem("new-reason", at, {}))}`, (typed) => {
      const fault = faultOf(told.with(i, { ...ask, reason: typed }));
      return fault && say(fault);
    });
    if (reason === null) return null;
    told[i] = { ...ask, reason };
  }
  return told;
}
