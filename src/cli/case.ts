import { dirname, isAbsolute, join } from "node:path";
import {
  type ClinicReview,
  clinicPath,
  type Outcome,
  type Plan,
  pricesPath,
  readPlan,
  type Source,
  type Sources,
  staffLanguage,
} from "#index.js";
import { readLines } from "#io/read-lines.js";
import { readSource } from "#io/read-source.js";
import type { Problem } from "#problems/problem.js";
import { clinicReviewsIn } from "./clinic-reviews.js";

/** A source, what it is, and where its first line stands on the user's side: a line of a stream has its own number. */
export type Text = Source & { is: keyof Sources; firstLine: number };

/** One plan on its way through the command line. */
export type Case = {
  /** As the user names it: "rex/plan.yaml", or "-:14" for a line of standard input. */
  name: string;
  plan: Outcome<Plan>;
  /** The plan as it came, its clinic profile and its price list: to show lines of, and to keep the hash of. */
  texts: Text[];
  /** The language of the clinic's staff, as far as it is known. */
  language: string;
  /** What the clinic itself has read of the languages. */
  reviews: ClinicReview[];
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
  if (!plan) return { name, plan: { value: null, problems: unread }, texts: [], language: "en", reviews: [] };
  const clinic = await readNamed(clinicPath(plan), folder);
  const prices = await readNamed(pricesPath({ plan, clinic: clinic?.value }), clinic ? dirname(clinic.path) : folder);
  const sources = { plan, clinic: clinic?.value, prices: prices?.value };
  const read = readPlan(sources, { today });
  const { value: reviews, problems } = await clinicReviewsIn(clinic ? dirname(clinic.path) : folder);
  return {
    name,
    plan: {
      value: reviews && read.value,
      problems: [...[clinic, prices].reduce(tellUnread, read.problems), ...problems],
    },
    texts: [
      { ...plan, is: "plan", firstLine },
      ...(clinic?.value ? [{ ...clinic.value, is: "clinic" as const, firstLine: 1 }] : []),
      ...(prices?.value ? [{ ...prices.value, is: "prices" as const, firstLine: 1 }] : []),
    ],
    language: staffLanguage(sources) ?? "en",
    reviews: reviews ?? [],
  };
}

/** A file that another names, looked for from that one's folder. path: as the user would write it. */
type Named = { named: string; path: string; value: Source | undefined; problems: Problem[] };

async function readNamed(named: string | null, folder: string): Promise<Named | null> {
  if (named === null) return null;
  const path = isAbsolute(named) ? named : join(folder, named);
  const { value, problems } = await readSource(path);
  return { named, path, value: value ?? undefined, problems };
}

/** Why a file could not be read is told where it is named, if what names it was read so far. */
function tellUnread(problems: Problem[], file: Named | null): Problem[] {
  if (!file || file.value) return problems;
  const missing = problems.find(({ code, values }) => code === "file-not-found" && values.path === file.named);
  const rest = problems.filter((problem) => problem !== missing);
  return [...rest, ...file.problems.map((problem) => ({ ...problem, at: missing?.at ?? problem.at }))];
}
