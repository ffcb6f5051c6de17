import { dirname, join, resolve } from "node:path";
import { hashOfFile, journalFile, keptPath, readKept } from "#io/case-folder.js";
import { readOverrides } from "#io/read-overrides.js";
import { changedSince } from "#journal/changed.js";
import type { Built, SourceKept } from "#journal/entry.js";
import { type Problem, problem } from "#problems/problem.js";
import { openCase } from "./case-folder.js";
import { openDesk } from "./desk.js";
import type { ExitCode } from "./exit-code.js";
import { madeWith, nameOf } from "./keep-build.js";
import { rebuild } from "./rebuild.js";
import { sayer } from "./say.js";

const at = { file: "", line: 1, column: 1, length: 1 };

/** Builds each paper of a case again and tells what is not as it was. */
export async function verifyCase(folder: string, options: { json?: boolean }): Promise<ExitCode> {
  const desk = await openDesk(options);
  const say = sayer(desk);
  const { value: entries, problems } = await openCase(folder);
  for (const found of problems) say(found);
  if (!entries) return problems.some(({ code }) => code === "case-journal-edited") ? 1 : 2;
  const built = entries.flatMap((entry, i) => (entry.what === "built" ? [{ entry, line: i + 1 }] : []));
  let wrong = 0;
  for (const { entry, line } of built) {
    const place = { ...at, file: join(folder, journalFile), line };
    const { revision, on, files } = entry;
    const found = await verifyOne(desk.house, folder, entry, place);
    wrong += found.length > 0 ? 1 : 0;
    if (found.length === 0)
      say(problem("verify-same", place, { revision, day: { day: on }, files: files.length }), about(folder, entry));
    for (const one of found) say(one, about(folder, entry));
  }
  const outside = await editedSince(folder, built.at(-1)?.entry);
  for (const found of outside) say(found, about(folder, built.at(-1)?.entry));
  say(problem("verify-done", at, { papers: built.length, wrong }));
  return wrong + outside.length > 0 ? 1 : 0;
}

const about = (folder: string, entry: Built | undefined) => ({
  folder,
  caseId: entry?.case ?? "",
  revision: entry?.revision ?? 0,
  language: entry?.languages[0]?.language ?? "",
});

/** What is wrong with one paper: kept files that are not as they were; if all are, bytes that come out otherwise now. */
async function verifyOne(
  house: Parameters<typeof rebuild>[0],
  folder: string,
  entry: Built,
  place: Problem["at"],
): Promise<Problem[]> {
  const kept = keptFilesOf(entry);
  const found = await Promise.all(kept.map(async (file) => ({ ...file, bytes: await readKept(folder, file) })));
  const spoiled = found.flatMap(({ name, sha256, bytes }): Problem[] => {
    const values = { path: keptPath(folder, name, sha256), name };
    if (bytes === "missing") return [problem("case-kept-missing", place, values)];
    return bytes === "changed" ? [problem("case-kept-changed", place, values)] : [];
  });
  if (spoiled.length > 0) return spoiled;
  const { revision, on } = entry;
  const { value: files, problems } = await rebuild(
    house,
    entry,
    (source) =>
      found.flatMap(({ sha256, bytes }) => (sha256 === source.sha256 && typeof bytes !== "string" ? [bytes] : []))[0],
  );
  const changed = async () => {
    const languages = Object.keys(entry.made.shipped).flatMap((name) => /^locales\/(.+)$/.exec(name)?.[1] ?? []);
    return changedSince(entry.made, await madeWith(languages)).join(", ");
  };
  const common = { revision, day: { day: on } };
  if (!files) {
    const codes = [...new Set(problems.filter(({ severity }) => severity !== "note").map(({ code }) => code))];
    return [problem("verify-stopped", place, { ...common, codes: codes.join(", "), changed: await changed() })];
  }
  const made = allFilesOf(entry);
  const names = [...new Set([...files, ...made].map(({ name }) => name))];
  const hashIn = (list: readonly { name: string; sha256: string }[], name: string) =>
    list.find((one) => one.name === name)?.sha256;
  const differ = names.filter((name) => hashIn(files, name) !== hashIn(made, name));
  if (differ.length === 0) return [];
  return [problem("verify-differs", place, { ...common, files: differ.join(", "), changed: await changed() })];
}

const allFilesOf = ({ files, forStaff = [] }: Pick<Built, "files" | "forStaff">) => [...files, ...forStaff];

function keptFilesOf({
  sources,
  earlier,
  reviews,
  overrides = [],
  facts,
  ...made
}: Built): { name: string; sha256: string }[] {
  const texts = [sources, ...earlier].flatMap(({ plan, clinic, prices, logo }) =>
    [plan, clinic ?? [], prices ?? [], logo ?? []].flat(),
  );
  return [
    ...[...texts, ...(reviews ? [reviews] : []), ...overrides].map((source) => ({
      name: nameOf(source),
      sha256: source.sha256,
    })),
    { name: "facts.json", sha256: facts },
    ...allFilesOf(made),
  ];
}

/** The texts of the last paper, where they lie now. */
async function editedSince(folder: string, last: Built | undefined): Promise<Problem[]> {
  const own = (last?.overrides ?? []).map((source): [string, SourceKept] => ["overrides", source]);
  const named = last ? [...Object.entries({ ...last.sources, reviews: last.reviews }), ...own] : [];
  const found = await Promise.all(
    named.map(async ([context, source]): Promise<Problem[]> => {
      if (!source || source.from === null) return [];
      const path = resolve(folder, source.from);
      const now = await hashOfFile(path);
      const place = { ...at, file: path };
      if (now === null) return [problem("verify-source-gone", place, { path, context })];
      return now === source.sha256 ? [] : [problem("verify-source-edited", place, { path, context })];
    }),
  );
  return [...found.flat(), ...(last ? await addedSince(folder, last) : [])];
}

/** Templates and texts of the clinic's own that lie beside its profile now, and did not when the last paper was made. */
async function addedSince(folder: string, { sources, overrides = [] }: Built): Promise<Problem[]> {
  const from = (sources.clinic ?? sources.plan).from;
  if (from === null) return [];
  const { value: now } = await readOverrides(dirname(resolve(folder, from)));
  return (now ?? [])
    .filter(({ name }) => !overrides.some((one) => one.name === name))
    .map(({ file: path }) => problem("verify-source-edited", { ...at, file: path }, { path, context: "overrides" }));
}
