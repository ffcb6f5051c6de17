import { readdir } from "node:fs/promises";
import { join, sep } from "node:path";
import { type Outcome, type Problem, problem } from "#problems/problem.js";
import { readSource, type Source } from "./read-source.js";
import { systemCode } from "./system-error.js";

/** Where a clinic keeps templates and texts of its own, beside its profile. */
export const overridesFolder = "overrides";

/** A file of that folder. name: its place in it, "templates/handout/ring.hbs". */
export type OwnSource = Source & { name: string };

/** More than all of ours together. */
const mostFiles = 1000;
const deepest = 5;

/**
 * The files of a clinic's own folder, in one order on every machine; none where there is no such folder. What editors and
 * systems leave behind (".DS_Store", "ring.hbs~") is passed over; a link is refused, for it may lead anywhere.
 * Problems: "override-unusable", and those of readSource.
 */
export async function readOverrides(clinicFolder: string): Promise<Outcome<OwnSource[]>> {
  const top = join(clinicFolder, overridesFolder);
  const problems: Problem[] = [];
  const files: OwnSource[] = [];
  const refuse = (path: string, context: string) =>
    problems.push(problem("override-unusable", whole(path), { path, context, limit: mostFiles }));

  async function enter(folder: string, depth: number): Promise<void> {
    const entries = await readdir(folder, { withFileTypes: true });
    for (const entry of entries.toSorted(byName)) {
      const path = join(folder, entry.name);
      if (entry.name.startsWith(".") || entry.name.endsWith("~")) continue;
      if (files.length >= mostFiles) return;
      if (entry.isDirectory() && depth < deepest) await enter(path, depth + 1);
      else if (entry.isFile()) await add(path);
      else refuse(path, "link");
    }
  }

  async function add(path: string): Promise<void> {
    const { value, problems: unread } = await readSource(path);
    if (value)
      files.push({
        ...value,
        name: path
          .slice(top.length + 1)
          .split(sep)
          .join("/"),
      });
    for (const found of unread) {
      if (found.code === "file-too-large") refuse(path, "large");
      else problems.push(found);
    }
    if (files.length >= mostFiles) refuse(top, "full");
  }

  try {
    await enter(top, 1);
  } catch (error) {
    const code = systemCode(error);
    if (code === null) throw error;
    if (code === "ENOTDIR") refuse(top, "link");
    else if (code !== "ENOENT") problems.push(unreadable(top, code));
  }
  return { value: problems.length > 0 ? null : files, problems };
}

/** The folder of a clinic's own files and those in it, whether or not there are any: to see what is put there. */
export async function overrideFolders(clinicFolder: string): Promise<string[]> {
  const top = join(clinicFolder, overridesFolder);
  const entries = await readdir(top, { recursive: true, withFileTypes: true }).catch(() => []);
  return [top, ...entries.flatMap((entry) => (entry.isDirectory() ? join(entry.parentPath, entry.name) : []))];
}

const byName = ({ name: a }: { name: string }, { name: b }: { name: string }): number => (a < b ? -1 : 1);
const whole = (file: string) => ({ file, line: 1, column: 1, length: 1 });

const unreadable = (path: string, detail: string): Problem =>
  ["EACCES", "EPERM"].includes(detail)
    ? problem("file-forbidden", whole(path), { path })
    : problem("file-unreadable", whole(path), { path, detail });
