import { compose, compute } from "#index.js";
import { settle } from "#problems/settle.js";
import { type Case, readCases } from "./case.js";
import { type Desk, openDesk } from "./desk.js";
import { type ExitCode, exitCodeOf } from "./exit-code.js";
import { follow } from "./follow.js";
import type { PlanOptions } from "./options.js";
import { report } from "./report.js";
import { count, noPlans, sum } from "./tally.js";
import { verdictLine, verdictOn } from "./verdict.js";

export async function checkPlans(plans: readonly string[], options: PlanOptions): Promise<ExitCode> {
  const desk = await openDesk(options);
  let tally = noPlans;
  for await (const one of readCases(plans, options.today))
    tally = count(tally, one, await checkOne(desk, one, options));
  sum(desk, tally);
  return tally.code;
}

/** As far as the words: what is drawn from them depends on the paper, and holds no more problems of the plan. */
async function checkOne(desk: Desk, one: Case, { allow }: PlanOptions): Promise<ExitCode> {
  const facts = await follow(one.plan, (plan) => compute(plan, desk.house, one.earlier));
  const handout = await follow(facts, (facts) => compose(facts, desk.house, { language: facts.owner.language }));
  const settled = settle(handout.problems, [...(one.plan.value?.allow ?? []), ...allow]);
  report(desk, one, settled);
  const verdict = verdictOn(settled);
  desk.terminal.out(desk.json ? JSON.stringify({ plan: one.name, ...verdict }) : verdictLine(desk, one, verdict));
  return exitCodeOf(settled.open);
}
