import { type Problem, problem } from "#problems/problem.js";
import { type Reason, settle, subjectOf } from "#problems/settle.js";
import { askLine } from "./ask.js";
import { back } from "./interview.js";
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
 * say of them. back: to the question before the first of them; null: they have had enough.
 */
export async function askReasons<A extends Asked & { about: Problem }>(
  asks: readonly A[],
  faultOf: (asks: readonly A[]) => Problem | undefined,
  say: (found: Problem) => string,
): Promise<readonly A[] | typeof back | null> {
  let told = [...asks];
  const open = asks.flatMap(({ reason }, i) => (reason === "" ? i : []));
  for (let n = 0; n < open.length; ) {
    const i = open[n] ?? 0;
    const ask = told[i];
    if (!ask) break;
    const reason = await askLine(`${say(ask.about)} ${say(problem("new-reason", at, {}))}`, ask.reason, (typed) => {
      const fault = faultOf(told.with(i, { ...ask, reason: typed }));
      return fault && say(fault);
    });
    if (reason === null || (reason === back && n === 0)) return reason;
    if (reason !== back) told = told.with(i, { ...ask, reason });
    n += reason === back ? -1 : 1;
  }
  return told;
}
