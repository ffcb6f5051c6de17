import { lstat, mkdir, mkdtemp, rename, rm, rmdir, writeFile } from "node:fs/promises";
import { dirname, join } from "node:path";
import { type Outcome, type Problem, problem } from "#problems/problem.js";
import { earlierBuild, leftBehind, stagingPrefix } from "./earlier-build.js";
import { alone } from "./lock.js";
import { systemCode } from "./system-error.js";

type OutFile = { name: string; bytes: Uint8Array };

/**
 * Writes a package into a folder in place of the one before, all of it or none: each file is first written to disk in a
 * private folder beside its place, and only when the last one is safe do the old files make way. So a full disk, or an error
 * on the way, leaves the folder as it was; one that is killed leaves files missing, never an old dose beside a new one.
 * What an earlier build wrote and this one does not is removed, and told; a file that was changed since is left, and told.
 * They hold personal data: files have mode 0600, folders made here 0700. A name may have folders in it ("es/handout.pdf").
 * The last file is put in place last: it is the record that names the others. Returns the paths written, in the order given.
 */
export async function writeWhole(folder: string, files: readonly OutFile[]): Promise<Outcome<string[]>> {
  try {
    await makeFolder(folder);
    return await alone(folder, () => replace(folder, files));
  } catch (error) {
    return { value: null, problems: [failed(folder, error)] };
  }
}

async function replace(folder: string, files: readonly OutFile[]): Promise<Outcome<string[]>> {
  const taken = await notFiles(files.map(({ name }) => join(folder, name)));
  if (taken.length > 0) return { value: null, problems: taken };
  const earlier = (await earlierBuild(folder)).filter(({ name }) => !files.some((file) => file.name === name));
  const stale = earlier.filter(({ changed }) => !changed).map(({ name }) => name);
  const killed = await leftBehind(folder);

  const staging = await mkdtemp(join(folder, stagingPrefix));
  try {
    for (const { name, bytes } of files) await stage(join(staging, "after", name), bytes);
    // The record goes first and comes last: a folder that has one has all that it names.
    const moves = [
      ...[...stale, ...files.map(({ name }) => name)]
        .toReversed()
        .map((name): Move => [name, folder, join(staging, "before")]),
      ...files.map(({ name }): Move => [name, join(staging, "after"), folder]),
    ];
    await moveAll(moves);
  } finally {
    await rm(staging, { recursive: true, force: true });
  }
  for (const path of killed) await rm(path, { recursive: true, force: true });
  await removeEmpty(folder, stale);
  return { value: files.map(({ name }) => join(folder, name)), problems: earlier.map((file) => told(folder, file)) };
}

async function stage(path: string, bytes: Uint8Array): Promise<void> {
  await makeFolder(dirname(path));
  await writeFile(path, bytes, { mode: 0o600, flag: "wx", flush: true });
}

/** A file's name, the folder it leaves and the folder it goes to. */
type Move = [name: string, from: string, to: string];

/** Makes the moves one after another; where one fails, those before it are undone. */
async function moveAll(moves: readonly Move[]): Promise<void> {
  const done: Move[] = [];
  try {
    for (const [name, from, to] of moves) if (await move(join(from, name), join(to, name))) done.push([name, from, to]);
  } catch (error) {
    for (const [name, from, to] of done.toReversed()) await move(join(to, name), join(from, name));
    throw error;
  }
}

/** False where there is nothing to move. */
async function move(from: string, to: string): Promise<boolean> {
  if (!(await lstat(from).catch(() => null))) return false;
  await makeFolder(dirname(to));
  await rename(from, to);
  return true;
}

const makeFolder = (path: string) => mkdir(path, { recursive: true, mode: 0o700 });

/** A language that is no longer built leaves no empty folder. */
async function removeEmpty(folder: string, names: readonly string[]): Promise<void> {
  const folders = new Set(names.map((name) => join(folder, dirname(name))));
  for (const path of folders) if (path !== join(folder)) await rmdir(path).catch(() => {});
}

const told = (folder: string, { name, changed }: { name: string; changed: boolean }): Problem => {
  const path = join(folder, name);
  return changed
    ? problem("out-changed-kept", whole(path), { path })
    : problem("out-stale-removed", whole(path), { path });
};

/** A folder cannot be written over: this is known before the first file is in place. */
async function notFiles(paths: readonly string[]): Promise<Problem[]> {
  const found = await Promise.all(paths.map((path) => lstat(path).catch(() => null)));
  return paths.filter((_, i) => found[i]?.isDirectory()).map((path) => problem("out-not-file", whole(path), { path }));
}

const whole = (file: string) => ({ file, line: 1, column: 1, length: 1 });

function failed(path: string, error: unknown): Problem {
  const code = systemCode(error);
  if (code === null) throw error;
  if (code === "EEXIST" || code === "ENOTDIR") return problem("out-not-folder", whole(path), { path });
  if (code === "EACCES" || code === "EPERM" || code === "EROFS") return problem("out-forbidden", whole(path), { path });
  if (code === "ENOSPC" || code === "EDQUOT") return problem("out-full", whole(path), { path });
  if (code === "ELOCKED") return problem("out-busy", whole(path), { path });
  return problem("out-failed", whole(path), { path, detail: code });
}
