import { compose, compute, reading } from "#index.js";
import { settle } from "#problems/settle.js";
import { type Case, readCases } from "./case.js";
import { readingLines } from "./check-reading.js";
import { type Desk, openDesk } from "./desk.js";
import { type ExitCode, exitCodeOf } from "./exit-code.js";
import { follow } from "./follow.js";
import type { CheckOptions } from "./options.js";
import { report } from "./report.js";
import { count, noPlans, sum } from "./tally.js";
import { verdictLine, verdictOn } from "./verdict.js";

export async function checkPlans(plans: readonly string[], options: CheckOptions): Promise<ExitCode> {
  const desk = await openDesk(options);
  let tally = noPlans;
  for await (const one of readCases(desk.house, plans, options.today))
    tally = count(tally, one, await checkOne({ ...desk, house: one.house }, one, options));
  sum(desk, tally);
  return tally.code;
}

/** As far as the words: what is drawn from them depends on the paper, and holds no more problems of the plan. */
async function checkOne(desk: Desk, one: Case, options: CheckOptions): Promise<ExitCode> {
  const facts = await follow(one.plan, (plan) => compute(plan, desk.house, one.earlier));
  const handout = await follow(facts, (facts) =>
    compose(facts, desk.house, { language: facts.owner.languages, reviews: one.reviews.reviews }),
  );
  const { value: plan } = one.plan;
  const read = options.reading && plan && handout.value ? reading(plan, handout.value, desk.house) : null;
  const problems = [...handout.problems, ...(read?.problems ?? [])];
  const settled = settle(problems, [...(plan?.allow ?? []), ...options.allow]);
  report(desk, one, settled);
  const verdict = verdictOn(settled);
  desk.terminal.out(desk.json ? JSON.stringify({ plan: one.name, ...verdict }) : verdictLine(desk, one, verdict));
  for (const line of read ? readingLines(desk, one, read) : []) desk.terminal.out(line);
  return exitCodeOf(settled.open);
}
