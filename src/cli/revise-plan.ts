import { basename, dirname, join } from "node:path";
import { compute, type Edit, editPlan, mergeVisit, revise, type Source } from "#index.js";
import { readSource } from "#io/read-source.js";
import { sha256 } from "#io/sha256.js";
import { writeNew } from "#io/write-new.js";
import type { Entry } from "#journal/entry.js";
import { type Problem, problem } from "#problems/problem.js";
import { settle } from "#problems/settle.js";
import { askVisit } from "./ask-visit.js";
import { type Case, readCase } from "./case.js";
import { addToCase, canKeep } from "./case-folder.js";
import { type Desk, openDesk } from "./desk.js";
import { type ExitCode, exitCodeOf } from "./exit-code.js";
import { follow } from "./follow.js";
import type { ReviseOptions } from "./options.js";
import { report } from "./report.js";
import { sayer } from "./say.js";
import { visitOf } from "./visit-flags.js";

const at = { file: "", line: 1, column: 1, length: 1 };

/** Writes the next revision of a plan beside it. Nothing is written where something stops it, and nothing is written over. */
export async function revisePlan(path: string, options: ReviseOptions): Promise<ExitCode> {
  const desk = await openDesk(options);
  const one = await readCase(path, await readSource(path), dirname(path), 1, options.today);
  const entered = await enteredBy(options, desk);
  // What the paper in force asked for was answered when it was built.
  const facts = await follow({ value: one.plan.value, problems: [] }, (plan) => compute(plan, desk.house, one.earlier));
  const unread = [...one.plan.problems, ...facts.problems].filter(({ severity }) => severity === "stop");
  const edits = await follow(entered, (entry) =>
    one.plan.value && facts.value
      ? revise(one.plan.value, facts.value, entry, desk.house)
      : { value: null, problems: [] },
  );
  const settled = settle([...unread, ...edits.problems], options.allow);
  report(desk, one, settled);
  if (!edits.value || !one.plan.value || settled.open.length > 0) return exitCodeOf(settled.open) || 1;
  const { caseId, revision } = facts.value ?? { caseId: "", revision: 0 };
  const kept = options.case === undefined ? null : await canKeep(options.case, caseId);
  for (const found of kept?.problems ?? []) sayer(desk)(found);
  if (kept && !kept.value) return 2;
  const next = await write(desk, one, path, revision + 1, edits.value);
  if (!next) return 2;
  if (options.case === undefined) return 0;
  const noted = await noteVisit(options.case, { caseId, revision: revision + 1, text: next, on: options.today });
  for (const found of noted) sayer(desk)(found);
  return noted.length > 0 ? 2 : 0;
}

async function enteredBy({ from, ...options }: ReviseOptions, desk: Desk): ReturnType<typeof mergeRead> {
  const flags = visitOf(options);
  if (from === undefined && Object.keys(flags).length === 0) return mergeRead(null, await askVisit(desk));
  if (from === undefined) return mergeRead(null, flags);
  const source = await readSource(from === "-" ? "/dev/stdin" : from, from);
  return source.value ? mergeRead(source.value, flags) : { value: null, problems: source.problems };
}

const mergeRead = async (source: Source | null, flags: Record<string, unknown>) => mergeVisit(source, flags);

async function write(
  desk: Desk,
  { texts }: Case,
  path: string,
  revision: number,
  edits: readonly Edit[],
): Promise<string | null> {
  const [plan] = texts;
  const say = sayer(desk);
  if (!plan) return null;
  const text = editPlan(new TextDecoder().decode(plan.bytes), [
    ...edits,
    { path: ["revises"], value: { plan: basename(path), sha256: sha256(plan.bytes) } },
  ]);
  const next = join(dirname(path), nameOf(basename(path), revision));
  if (!(await writeNew(next, text))) {
    say(problem("revise-exists", at, { path: next }));
    return null;
  }
  say(problem("revise-written", at, { path: next, revision }));
  desk.terminal.out(next);
  return text;
}

/** The visit, in the journal of its case, with the plan that came of it. */
async function noteVisit(
  folder: string,
  { caseId, revision, text, on }: { caseId: string; revision: number; text: string; on: string },
): Promise<Problem[]> {
  const bytes = new TextEncoder().encode(text);
  const entry: Entry = {
    ...{ what: "visited", at: new Date().toISOString(), on, case: caseId, revision },
    plan: sha256(bytes),
  };
  return (await addToCase(folder, caseId, [{ name: "plan.yaml", bytes }], () => [entry])).problems;
}

/** "plan.yaml" -> "plan.r1.yaml" -> "plan.r2.yaml" */
const nameOf = (name: string, revision: number): string =>
  name.replace(/(?:\.r\d+)?(\.[^.]+)?$/, (_, ending: string | undefined) => `.r${revision}${ending ?? ""}`);
