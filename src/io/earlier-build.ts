import { lstat, readdir, readFile, realpath } from "node:fs/promises";
import { dirname, join, normalize, sep } from "node:path";
import { sha256 } from "./sha256.js";

/** A file that an earlier build wrote, by its record. changed: it is no longer as it was written. */
export type EarlierFile = { name: string; changed: boolean };

/** The private folder that a build writes in before its files are put in place; one that was killed leaves it behind. */
export const stagingPrefix = ".hearthsheet-";

/**
 * The files of earlier builds that still lie in a folder: those its record.json names, and those of a build that was killed
 * while it put them in place. A record is read and not trusted: it can name no file outside the folder, and none whose bytes
 * are not those it tells of is ours.
 */
export async function earlierBuild(folder: string): Promise<EarlierFile[]> {
  const killed = await leftBehind(folder);
  const records = [folder, ...killed.flatMap((path) => [join(path, "before"), join(path, "after")])];
  const named = (await Promise.all(records.map(filesOf))).flat();
  const names = [...new Set(named.map(({ name }) => name))].filter(isInside).sort();
  const found = await Promise.all(
    names.map(async (name): Promise<EarlierFile[]> => {
      const sha256 = await hashOf(folder, name);
      return sha256 === null
        ? []
        : [{ name, changed: !named.some((one) => one.name === name && one.sha256 === sha256) }];
    }),
  );
  return found.flat();
}

/** The private folders of builds that were killed. */
export async function leftBehind(folder: string): Promise<string[]> {
  const entries = await readdir(folder, { withFileTypes: true });
  return entries
    .filter((entry) => entry.isDirectory() && entry.name.startsWith(stagingPrefix))
    .map(({ name }) => join(folder, name));
}

type Named = { name: string; sha256: string };

async function filesOf(folder: string): Promise<Named[]> {
  try {
    const record: unknown = JSON.parse(await readFile(join(folder, "record.json"), "utf8"));
    const { format, files, forStaff = [] } = record as { format?: unknown; files?: unknown; forStaff?: unknown };
    if (
      typeof format !== "string" ||
      !format.startsWith("hearthsheet-record/") ||
      !Array.isArray(files) ||
      !Array.isArray(forStaff)
    )
      return [];
    return [...files, ...forStaff].filter(
      (file): file is Named => typeof file?.name === "string" && typeof file?.sha256 === "string",
    );
  } catch {
    return []; // No record, or not one of ours: there is nothing here that we know to be ours.
  }
}

/** "es/handout.pdf": below the folder, and written as the tool writes it. */
const isInside = (name: string): boolean =>
  normalize(name) === name && !name.includes("\\") && !name.includes("\0") && !/^(\.|\.\.|\/)/.test(name);

/** Null where there is no plain file of that name, or a link leads out of the folder on the way to it. */
async function hashOf(folder: string, name: string): Promise<string | null> {
  const path = join(folder, name);
  try {
    const home = await realpath(folder);
    if (!`${await realpath(dirname(path))}${sep}`.startsWith(`${home}${sep}`) || !(await lstat(path)).isFile())
      return null;
    return sha256(await readFile(path));
  } catch {
    return null;
  }
}
