import { readdir, readFile, rm } from "node:fs/promises";
import { extname, join } from "node:path";
import { sha256 } from "./sha256.js";
import { privateFolder } from "./state.js";
import { systemCode } from "./system-error.js";
import { isDraft, replaceFile, writeNew } from "./write-new.js";

/** The journal of a case, and the folder of what its lines name, each file under the hash of its bytes. */
export const journalFile = "journal.jsonl";
const keptFolder = "kept";

/** Where a kept file lies; it has the ending of its name, so that it opens by itself. */
export const keptPath = (folder: string, name: string, hash: string): string =>
  join(folder, keptFolder, `${hash}${extname(name)}`);

/** The text of a case's journal; "" where there is none yet. */
export async function readJournalText(folder: string): Promise<string> {
  return (await readIfThere(join(folder, journalFile)))?.toString("utf8") ?? "";
}

/** Puts the journal, with what was added to it, in the place of the one before: whole or not at all. */
export const writeJournal = (folder: string, text: string): Promise<void> =>
  replaceFile(join(folder, journalFile), text);

/** Keeps files that are not kept yet; each is whole or absent, and none is ever written over. */
export async function keep(folder: string, files: readonly { name: string; bytes: Uint8Array }[]): Promise<void> {
  await privateFolder(join(folder, keptFolder));
  for (const { name, bytes } of files) await writeNew(keptPath(folder, name, sha256(bytes)), bytes);
}

/** A kept file's bytes, "missing", or "changed" where they are not those it was named after. */
export async function readKept(
  folder: string,
  { name, sha256: hash }: { name: string; sha256: string },
): Promise<Uint8Array | "missing" | "changed"> {
  const bytes = await readIfThere(keptPath(folder, name, hash));
  if (!bytes) return "missing";
  return sha256(bytes) === hash ? bytes : "changed";
}

/** The hash of a file, or null where it is not there. */
export async function hashOfFile(path: string): Promise<string | null> {
  const bytes = await readIfThere(path);
  return bytes && sha256(bytes);
}

async function readIfThere(path: string): Promise<Buffer | null> {
  try {
    return await readFile(path);
  } catch (error) {
    if (["ENOENT", "ENOTDIR"].includes(systemCode(error) ?? "")) return null;
    throw error;
  }
}

/** What a process that was killed left half written; only while the folder is held alone. */
export async function removeDrafts(folder: string): Promise<void> {
  for (const path of [folder, join(folder, keptFolder)]) {
    const names = await readdir(path).catch(() => []);
    for (const name of names.filter(isDraft)) await rm(join(path, name), { force: true });
  }
}
