import { randomUUID } from "node:crypto";
import { constants, copyFile, link, open, rename, rm } from "node:fs/promises";
import { dirname, join } from "node:path";
import { stagingPrefix } from "./earlier-build.js";
import { systemCode } from "./system-error.js";

/**
 * Writes a file that is not there yet, whole or not at all, even where the tool is killed on the way; false where it is there.
 * Of two at once one gets it. Mode 0600.
 */
export const writeNew = (path: string, content: string | Uint8Array): Promise<boolean> =>
  beside(path, content, async (draft) => {
    try {
      await linkOrCopy(draft, path);
      return true;
    } catch (error) {
      if (systemCode(error) === "EEXIST") return false;
      throw error;
    }
  });

/** Some disks (a memory stick) know no links; there a copy has to do. */
async function linkOrCopy(draft: string, path: string): Promise<void> {
  try {
    await link(draft, path);
  } catch (error) {
    if (!["EPERM", "ENOTSUP", "EOPNOTSUPP", "ENOSYS"].includes(systemCode(error) ?? "")) throw error;
    await copyFile(draft, path, constants.COPYFILE_EXCL);
  }
}

/** Writes a file in the place of the one before, whole or not at all. Mode 0600. */
export const replaceFile = (path: string, content: string | Uint8Array): Promise<void> =>
  beside(path, content, (draft) => rename(draft, path));

/** The name of a file that is being written. */
export const isDraft = (name: string): boolean => name.startsWith(stagingPrefix) && name.endsWith(".draft");

/** Writes a draft to disk beside a file's place, puts it there, and leaves no draft behind. */
async function beside<T>(path: string, content: string | Uint8Array, put: (draft: string) => Promise<T>): Promise<T> {
  const draft = join(dirname(path), `${stagingPrefix}${randomUUID()}.draft`);
  try {
    const handle = await open(draft, "wx", 0o600);
    try {
      await handle.writeFile(content);
      await handle.sync();
    } finally {
      await handle.close();
    }
    const done = await put(draft);
    await syncFolder(dirname(path));
    return done;
  } finally {
    await rm(draft, { force: true });
  }
}

/** A name is safe on disk only when its folder is; some systems have no way to say so. */
async function syncFolder(path: string): Promise<void> {
  const folder = await open(path).catch(() => null);
  try {
    await folder?.sync().catch(() => {});
  } finally {
    await folder?.close();
  }
}
