import { mkdir } from "node:fs/promises";
import { dirname, join } from "node:path";
import { languages, speaks } from "#index.js";
import { addToLedger, readLedger } from "#io/ledger.js";
import { readLines } from "#io/read-lines.js";
import { type Builder, type Built, builder, type Task } from "./build-task.js";
import { type Desk, openDesk } from "./desk.js";
import type { ExitCode } from "./exit-code.js";
import { inOrder } from "./in-order.js";
import type { BuildOptions } from "./options.js";
import { outFolders } from "./out-folders.js";
import { broken, poolOf } from "./pool.js";
import { progressLine } from "./progress-line.js";
import { count, noPlans, sum } from "./tally.js";

/** Ends the command with a message: bad usage that shows only once all that ships is known. */
type Refuse = (message: string) => never;

/** What a batch has done so far, a line a plan: a run that was killed goes on from it. It names files and holds no words. */
const journalName = ".hearthsheet-batch.jsonl";

/**
 * Builds the package of each plan: several at once where there are jobs, told in the order of the plans. A plan that cannot be
 * built, or breaks its worker, stops no other.
 */
export async function buildPlans(plans: readonly string[], options: BuildOptions, refuse: Refuse): Promise<ExitCode> {
  const desk = await openDesk(options);
  refuseUnknown(options.language, desk, refuse);
  const { jobs = 1, resume = false, out } = options;
  const isBatch = plans.length > 1 || plans[0] === "-";
  const keeps = isBatch && (jobs > 1 || resume);
  const journal = join(out, journalName);
  const done = resume ? doneBefore(await readLedger(journal)) : new Map<string, string>();
  const pool = isBatch && jobs > 1 ? poolOf(jobs) : null;
  const here = builder(desk);
  const build: Builder = pool?.build ?? (isBatch ? (task) => here(task).catch((error) => broken(task, error)) : here);

  let tally = noPlans;
  const started = Date.now();
  try {
    // A few more than are being built wait ready, and no more: however many plans there are, memory stays as it is.
    for await (const built of inOrder(tasks(plans, options, done), build, pool ? 2 * jobs : 1)) {
      for (const { to, line } of built.said) desk.terminal[to](line);
      tally = count(tally, built, built.code);
      if (keeps && built.code === 0 && !built.skipped) await note(journal, built);
      if (isBatch)
        desk.terminal.progress(progressLine(tally, plans, (Date.now() - started) / 1000, desk.terminal.width));
    }
  } finally {
    await pool?.close();
  }
  sum(desk, tally);
  return tally.code;
}

async function* tasks(
  plans: readonly string[],
  options: BuildOptions,
  done: ReadonlyMap<string, string>,
): AsyncGenerator<Task> {
  const folders = outFolders(plans);
  const task = (name: string, folder: string): Task => ({
    name,
    options,
    from: dirname(name),
    folder: join(options.out, folder),
    kept: options.case === undefined ? null : join(options.case, folder),
    before: done.get(name) ?? null,
    line: 1,
    source: null,
  });
  for (const plan of plans) {
    if (plan !== "-") yield task(plan, folders.get(plan) ?? "");
    else
      for await (const { line, source } of readLines(process.stdin, plan))
        yield { ...task(`-:${line}`, `line-${line}`), from: ".", line, source };
  }
}

/** By the name of a plan, what it was built from. A line that was torn by the kill says nothing. */
function doneBefore(lines: readonly string[]): Map<string, string> {
  return new Map(
    lines.flatMap((line): [string, string][] => {
      try {
        const { plan, from } = JSON.parse(line);
        return [[String(plan), String(from)]];
      } catch {
        return [];
      }
    }),
  );
}

async function note(journal: string, { name, from }: Built): Promise<void> {
  await mkdir(dirname(journal), { recursive: true });
  await addToLedger(journal, { plan: name, from });
}

/** A language that was asked for by hand is built, or it is an error: never quietly another. */
function refuseUnknown(asked: readonly string[], { house }: Desk, refuse: Refuse): void {
  const unknown = asked.find((language) => speaks(house, language) === null);
  if (unknown === undefined) return;
  const have = languages(house).map(({ tag }) => tag);
  refuse(`error: there are no words in the language '${unknown}'. There are: ${have.join(", ")}.`);
}
