import { dirname, join, resolve } from "node:path";
import { clinicPath, type Outcome, type Plan, readPlan, type Source, staffLanguage } from "#index.js";
import { readLines } from "#io/read-lines.js";
import { readSource } from "#io/read-source.js";
import type { Problem } from "#problems/problem.js";

/** A source, and where its first line stands on the user's side: a line of a stream has its own number. */
export type Text = Source & { firstLine: number };

/** One plan on its way through the command line. */
export type Case = {
  /** As the user names it: "rex/plan.yaml", or "-:14" for a line of standard input. */
  name: string;
  plan: Outcome<Plan>;
  /** The plan as it came, and its clinic profile: to show lines of, and to keep the hash of. */
  texts: Text[];
  /** The language of the clinic's staff, as far as it is known. */
  language: string;
};

/** The cases the user named, one after another; "-" is one case a line of standard input. today: "2026-03-04". */
export async function* readCases(paths: readonly string[], today: string): AsyncGenerator<Case> {
  for (const path of paths) {
    if (path !== "-") yield readCase(path, await readSource(path), dirname(path), 1, today);
    else
      for await (const { line, source } of readLines(process.stdin, path))
        yield readCase(`${path}:${line}`, source, ".", line, today);
  }
}

async function readCase(
  name: string,
  { value: plan, problems: unread }: Outcome<Source>,
  folder: string,
  firstLine: number,
  today: string,
): Promise<Case> {
  if (!plan) return { name, plan: { value: null, problems: unread }, texts: [], language: "en" };
  const named = clinicPath(plan);
  const clinic = named === null ? null : await readSource(resolve(folder, named), join(folder, named));
  const sources = { plan, clinic: clinic?.value ?? undefined };
  const read = readPlan(sources, { today });
  return {
    name,
    plan: clinic?.value === null ? { value: null, problems: tellUnread(read.problems, clinic.problems) } : read,
    texts: [{ ...plan, firstLine }, ...(clinic?.value ? [{ ...clinic.value, firstLine: 1 }] : [])],
    language: staffLanguage(sources) ?? "en",
  };
}

/** Why the clinic profile could not be read is told where the plan names it, if the plan was read so far. */
function tellUnread(problems: readonly Problem[], why: readonly Problem[]): Problem[] {
  const missing = problems.find(({ code }) => code === "file-not-found");
  const rest = problems.filter((problem) => problem !== missing);
  return [...rest, ...why.map((problem) => ({ ...problem, at: missing?.at ?? problem.at }))];
}
