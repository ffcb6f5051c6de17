import { lstat, mkdir, mkdtemp, rename, rm, writeFile } from "node:fs/promises";
import { dirname, join } from "node:path";
import { type Outcome, type Problem, problem } from "#problems/problem.js";
import { systemCode } from "./system-error.js";

/**
 * Writes files into a folder, all of them or none: each is first written to disk in a private folder beside its place,
 * and only when the last one is safe are they renamed into place, over what was there. So a full disk, or an error on the
 * way, leaves the folder as it was. They hold personal data: files have mode 0600, folders made here 0700.
 * A name may have folders in it ("es/handout.pdf"). Returns the paths written, in the order given.
 */
export async function writeWhole(
  folder: string,
  files: readonly { name: string; bytes: Uint8Array }[],
): Promise<Outcome<string[]>> {
  let staging: string | undefined;
  try {
    await makeFolder(folder);
    const taken = await notFiles(files.map(({ name }) => join(folder, name)));
    if (taken.length > 0) return { value: null, problems: taken };

    staging = await mkdtemp(join(folder, ".hearthsheet-"));
    for (const { name, bytes } of files) {
      await makeFolder(dirname(join(staging, name)));
      await writeFile(join(staging, name), bytes, { mode: 0o600, flag: "wx", flush: true });
    }
    const written: string[] = [];
    for (const { name } of files) {
      await makeFolder(dirname(join(folder, name)));
      await rename(join(staging, name), join(folder, name));
      written.push(join(folder, name));
    }
    return { value: written, problems: [] };
  } catch (error) {
    return { value: null, problems: [failed(folder, error)] };
  } finally {
    if (staging) await rm(staging, { recursive: true, force: true });
  }
}

const makeFolder = (path: string) => mkdir(path, { recursive: true, mode: 0o700 });

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
  return problem("out-failed", whole(path), { path, detail: code });
}
