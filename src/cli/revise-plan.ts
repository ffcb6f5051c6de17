import { dirname } from "node:path";
import { compute, type Outcome, type Source } from "#index.js";
import { readSource, readStream } from "#io/read-source.js";
import { sha256 } from "#io/sha256.js";
import { systemCode } from "#io/system-error.js";
import { writeNew } from "#io/write-new.js";
import type { Entry as Noted } from "#journal/entry.js";
import { type Problem, problem, stops } from "#problems/problem.js";
import { type Reason, type Settled, settle, subjectOf } from "#problems/settle.js";
import { askReasons, askVisit } from "./ask-visit.js";
import { readCase } from "./case.js";
import { addToCase, canKeep } from "./case-folder.js";
import { ageOf } from "./clock.js";
import { type Desk, openDesk } from "./desk.js";
import { canAsk } from "./entry/ask.js";
import { type ExitCode, exitCodeOf } from "./exit-code.js";
import { follow } from "./follow.js";
import { type Entry, type InForce, type Next, nextRevision } from "./next-revision.js";
import type { ReviseOptions } from "./options.js";
import { report } from "./report.js";
import { sayer } from "./say.js";
import { visitOf } from "./visit-flags.js";

const at = { file: "", line: 1, column: 1, length: 1 };
const screen = { input: process.stdin, output: process.stderr };

/** Writes the next revision of a plan beside it. Nothing is written where something stops it, and nothing is written over. */
export async function revisePlan(path: string, options: ReviseOptions): Promise<ExitCode> {
  const tool = await openDesk(options);
  const one = await readCase(tool.house, path, await readSource(path), dirname(path), 1, options.today);
  const desk = { ...tool, house: one.house };
  // What the paper in force asked for was answered when it was built.
  const facts = await follow({ value: one.plan.value, problems: [] }, (plan) => compute(plan, desk.house, one.earlier));
  const unread = [...one.plan.problems, ...facts.problems].filter(({ severity }) => severity === "stop");
  if (!one.plan.value || !facts.value || unread.length > 0) {
    report(desk, one, settle(unread, []));
    return exitCodeOf(unread) || 1;
  }
  const inForce = { one, path, plan: one.plan.value, facts: facts.value, today: options.today };
  const entered = await enteredBy(desk, inForce, options);
  if (!entered) {
    sayer(desk)(problem("new-cancelled", at, {}));
    return 2;
  }
  const { next, settled } = entered;
  const both = { ...one, texts: [...one.texts, ...(next ? [{ ...next, is: "plan" as const, firstLine: 1 }] : [])] };
  report(desk, both, settled);
  if (!next || settled.open.length > 0) return exitCodeOf(settled.open) || 1;
  const code = await write(desk, inForce, next, options);
  if (code === 0) report(desk, both, settle(next.toChoose, []));
  return code;
}

type Entered = { next: Next | null; settled: Settled };

/** What was entered, from a file, from flags, or on the terminal; null where that was broken off. */
async function enteredBy(desk: Desk, inForce: InForce, { from, ...options }: ReviseOptions): Promise<Entered | null> {
  const flags = visitOf(options);
  const asked = from === undefined && Object.keys(flags).length === 0 && canAsk();
  const trial = (entry: Omit<Entry, "reasons">, reasons: readonly Reason[]) =>
    nextRevision(desk.house, inForce, { ...entry, reasons });
  if (asked) {
    const medicines = inForce.plan.medicines.map(({ name }) => name);
    const tryOut = (fields: Record<string, unknown>) => trial({ source: null, fields }, []).problems;
    const collar = inForce.plan.collar !== undefined;
    const fields = await askVisit(desk, { medicines, collar, tryOut }, screen);
    if (!fields) return null;
    const asks = settle(tryOut(fields), options.allow).open.filter(({ severity }) => severity === "ask");
    const told = asks.map((found) => ({ found, for: subjectOf(found, asks) }));
    const reasons = await askReasons(desk, told, screen);
    return (
      reasons &&
      entered(trial({ source: null, fields }, [...options.allow, ...reasons]), [...options.allow, ...reasons])
    );
  }
  const reading = from === "-" ? readStream(process.stdin, from) : from === undefined ? null : readSource(from);
  const read = await reading;
  if (read && !read.value) return { next: null, settled: settle(read.problems, []) };
  return entered(trial({ source: read?.value ?? null, fields: flags }, options.allow), options.allow);
}

const entered = ({ value, problems }: Outcome<Next>, reasons: readonly Reason[]): Entered => ({
  next: value,
  settled: settle(problems, reasons),
});

/** The new plan, and the visit in the journal of its case. Nothing is written that the case could not keep. */
async function write(desk: Desk, { facts }: InForce, next: Next, options: ReviseOptions): Promise<ExitCode> {
  const say = sayer(desk);
  const revision = facts.revision + 1;
  if (options.case !== undefined) {
    const aged = ageOf(next.file, next.on, options.today);
    for (const found of aged) say(found);
    if (stops(aged)) return 1;
    const kept = await canKeep(options.case, facts.caseId, [{ name: "plan.yaml", bytes: next.bytes }]);
    for (const found of kept.problems) say(found);
    if (!kept.value) return 2;
  }
  const unwritten = await writeRevision(next);
  if (unwritten) {
    say(unwritten);
    return 2;
  }
  say(problem("revise-written", at, { path: next.file, revision }));
  desk.terminal.out(next.file);
  if (options.case === undefined) return 0;
  const noted = await noteVisit(options.case, facts.caseId, {
    ...{ revision, on: options.today, plan: sha256(next.bytes) },
  });
  for (const found of noted) say(found);
  return noted.length > 0 ? 2 : 0;
}

async function writeRevision({ file: path, bytes }: Source): Promise<Problem | null> {
  try {
    return (await writeNew(path, bytes)) ? null : problem("revise-exists", at, { path });
  } catch (error) {
    const detail = systemCode(error);
    if (detail === null) throw error;
    return problem("new-unwritable", at, { path, detail });
  }
}

/** The visit, in the journal of its case, with the plan that came of it. */
async function noteVisit(
  folder: string,
  caseId: string,
  visit: { revision: number; on: string; plan: string },
): Promise<Problem[]> {
  const entry: Noted = { what: "visited", at: new Date().toISOString(), case: caseId, ...visit };
  return (await addToCase(folder, caseId, [], () => [entry])).problems;
}
