import { dirname, isAbsolute, join } from "node:path";
import {
  clinicPath,
  type House,
  type Logo,
  namedIn,
  type Outcome,
  openLogo,
  type Plan,
  pricesPath,
  readPlan,
  type Source,
  type Sources,
  staffLanguage,
} from "#index.js";
import { readLines } from "#io/read-lines.js";
import { readSource } from "#io/read-source.js";
import { sha256 } from "#io/sha256.js";
import { logoEngine } from "#io/shipped.js";
import { placeOf } from "#problems/place.js";
import { type Problem, problem } from "#problems/problem.js";
import { clinicHouse } from "./clinic-house.js";
import { clinicReviewsIn, noReviews, type Reviews } from "./clinic-reviews.js";

/** A source, what it is, and where its first line stands on the user's side: a line of a stream has its own number. */
export type Text = Source & { is: keyof Sources | "logo" | "own"; firstLine: number };

/** One plan on its way through the command line. */
export type Case = {
  /** As the user names it: "rex/plan.yaml", or "-:14" for a line of standard input. */
  name: string;
  plan: Outcome<Plan>;
  /** The revisions before it, the oldest first. */
  earlier: Plan[];
  /** What each of them was read from: itself, its clinic profile and its price list. */
  past: Text[][];
  /** The plan as it came, its clinic profile, its price list and what the clinic has of its own: to show lines of, and to keep. */
  texts: Text[];
  /** The house with the clinic's own templates and texts. */
  house: House;
  /** The language of the clinic's staff, as far as it is known. */
  language: string;
  /** What the clinic itself has read of the languages. */
  reviews: Reviews;
  /** The clinic's, ready to be drawn. */
  logo?: Logo | null;
};

/** The cases the user named, one after another; "-" is one case a line of standard input. today: "2026-03-04". */
export async function* readCases(house: House, paths: readonly string[], today: string): AsyncGenerator<Case> {
  for (const path of paths) {
    if (path !== "-") yield readCase(house, path, await readSource(path), dirname(path), 1, today);
    else
      for await (const { line, source } of readLines(process.stdin, path))
        yield readCase(house, `${path}:${line}`, source, ".", line, today);
  }
}

/** house: ours; the case has it with what its clinic has of its own. */
export async function readCase(
  house: House,
  name: string,
  { value: plan, problems: unread }: Outcome<Source>,
  folder: string,
  firstLine: number,
  today: string,
): Promise<Case> {
  if (!plan)
    return {
      ...{ name, plan: { value: null, problems: unread }, earlier: [], past: [], texts: [] },
      ...{ house, language: "en", reviews: noReviews, logo: null },
    };
  const clinic = asClinic(await readNamed(clinicPath(plan), folder));
  const prices = await readNamed(pricesPath({ plan, clinic: clinic?.value }), clinic ? dirname(clinic.path) : folder);
  const sources = { plan, clinic: clinic?.value, prices: prices?.value };
  const read = readPlan(sources, { today });
  const before = await readEarlier(house, read.value, folder, today);
  const clinicFolder = clinic ? dirname(clinic.path) : folder;
  const logo = await readLogo(sources, clinicFolder);
  const { value: reviews, problems: unreviewed } = await clinicReviewsIn(clinicFolder);
  const own = await clinicHouse(house, clinicFolder);
  const problems = [
    ...[clinic, prices].reduce(tellUnread, read.problems),
    ...before.problems,
    ...unreviewed,
    ...logo.problems,
    ...own.problems,
  ];
  return {
    name,
    plan: { value: before.value && reviews && logo.value && own.house && read.value, problems },
    earlier: before.value?.plans ?? [],
    past: before.value?.texts ?? [],
    texts: [
      { ...plan, is: "plan", firstLine },
      ...(clinic?.value ? [{ ...clinic.value, is: "clinic" as const, firstLine: 1 }] : []),
      ...(prices?.value ? [{ ...prices.value, is: "prices" as const, firstLine: 1 }] : []),
      ...own.own.map((text) => ({ ...text, is: "own" as const, firstLine: 1 })),
      ...(logo.value?.source ? [{ ...logo.value.source, is: "logo" as const, firstLine: 1 }] : []),
    ],
    house: own.house ?? house,
    language: staffLanguage(sources) ?? "en",
    reviews: reviews ?? noReviews,
    logo: logo.value?.logo ?? null,
  };
}

type ReadLogo = { source: Source | null; logo: Logo | null };

/** The clinic's logo, read and drawn; none where its profile names none. What is wrong is told where it is named. */
async function readLogo(sources: Sources, folder: string): Promise<Outcome<ReadLogo>> {
  const field = namedIn(sources, "logo");
  const named = await readNamed(field?.path ?? null, folder);
  if (!field || !named) return { value: { source: null, logo: null }, problems: [] };
  const { at } = field;
  if (!named.value) return { value: null, problems: named.problems.map((found) => unreadLogo(found, at)) };
  const { value: logo, problems } = await openLogo(named.value, at, await logoEngine());
  return { value: logo && { source: named.value, logo }, problems };
}

const unreadLogo = (found: Problem, at: Problem["at"]): Problem =>
  found.code === "file-too-large" ? problem("logo-too-large", at, found.values) : { ...found, at };

/** The revisions before a plan, each as it was when the next was made from it. Problems: "earlier-missing", "earlier-changed". */
async function readEarlier(house: House, plan: Plan | null, folder: string, today: string): Promise<Outcome<Earlier>> {
  if (!plan?.revises) return { value: { plans: [], texts: [] }, problems: [] };
  const at = placeOf(plan.places, "revises", "plan");
  const path = isAbsolute(plan.revises.plan) ? plan.revises.plan : join(folder, plan.revises.plan);
  const source = await readSource(path);
  if (!source.value) return { value: null, problems: [problem("earlier-missing", at, { path })] };
  if (sha256(source.value.bytes) !== plan.revises.sha256)
    return { value: null, problems: [problem("earlier-changed", at, { path })] };
  const before = await readCase(house, path, source, dirname(path), 1, today);
  const unread = before.plan.value ? [] : before.plan.problems;
  const value = before.plan.value && {
    plans: [...before.earlier, before.plan.value],
    texts: [...before.past, before.texts],
  };
  return { value, problems: unread };
}

type Earlier = { plans: Plan[]; texts: Text[][] };

/** A file that another names, looked for from that one's folder. path: as the user would write it. */
type Named = { named: string; path: string; value: Source | undefined; problems: Problem[] };

async function readNamed(named: string | null, folder: string): Promise<Named | null> {
  if (named === null) return null;
  const path = isAbsolute(named) ? named : join(folder, named);
  const { value, problems } = await readSource(path);
  return { named, path, value: value ?? undefined, problems };
}

/** A profile that is not there can be made, which is told. */
const asClinic = (file: Named | null): Named | null =>
  file && {
    ...file,
    problems: file.problems.map((found) =>
      found.code === "file-not-found" ? problem("clinic-not-found", found.at, found.values) : found,
    ),
  };

/** Why a file could not be read is told where it is named, if what names it was read so far. */
function tellUnread(problems: Problem[], file: Named | null): Problem[] {
  if (!file || file.value) return problems;
  const missing = problems.find(({ code, values }) => code === "file-not-found" && values.path === file.named);
  const rest = problems.filter((problem) => problem !== missing);
  return [...rest, ...file.problems.map((problem) => ({ ...problem, at: missing?.at ?? problem.at }))];
}
