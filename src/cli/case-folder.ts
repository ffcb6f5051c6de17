import { join } from "node:path";
import type { Outcome } from "#index.js";
import { journalFile, keep, readJournalText, removeDrafts, writeJournal } from "#io/case-folder.js";
import { alone } from "#io/lock.js";
import { privateFolder } from "#io/state.js";
import { systemCode } from "#io/system-error.js";
import type { Entry } from "#journal/entry.js";
import { readJournal, withEntry } from "#journal/journal.js";
import { problem } from "#problems/problem.js";

type Kept = readonly { name: string; bytes: Uint8Array }[];

/** The journal of a case folder. Problems: "case-missing", "case-journal-edited", "case-unusable". */
export async function openCase(folder: string): Promise<Outcome<Entry[]>> {
  return usable(folder, async () => {
    const text = await readJournalText(folder);
    if (text === "") return { value: null, problems: [problem("case-missing", whole(folder), { path: folder })] };
    return readJournal(join(folder, journalFile), text);
  });
}

/**
 * Adds to a case folder what happened in a case, with the files it names: one process at a time, and each file and the journal
 * whole or as they were. next: what there is to add, seen what is there. The folder is made if it is not there.
 * Problems: those of openCase, and "case-other".
 */
export async function addToCase(
  folder: string,
  caseId: string,
  kept: Kept,
  next: (before: readonly Entry[]) => readonly Entry[],
): Promise<Outcome<Entry[]>> {
  return usable(folder, async () => {
    await privateFolder(folder);
    return alone(folder, async () => {
      const text = await readJournalText(folder);
      const read = readJournal(join(folder, journalFile), text);
      if (!read.value) return read;
      if (read.value.some((entry) => entry.case !== caseId))
        return { value: null, problems: [problem("case-other", whole(folder), { path: folder })] };
      const added = next(read.value);
      await removeDrafts(folder);
      await keep(folder, kept);
      if (added.length > 0) await writeJournal(folder, added.reduce(withEntry, text));
      return { value: [...added], problems: [] };
    });
  });
}

/**
 * Whether a case folder can take a case: what is to be handed out is kept first, so that none is handed out that there was no
 * room for. It stands in the case when a line of the journal names it.
 */
export const canKeep = (folder: string, caseId: string, kept: Kept): Promise<Outcome<Entry[]>> =>
  addToCase(folder, caseId, kept, () => []);

const whole = (file: string) => ({ file, line: 1, column: 1, length: 1 });

async function usable<T>(folder: string, work: () => Promise<Outcome<T>>): Promise<Outcome<T>> {
  try {
    return await work();
  } catch (error) {
    const detail = systemCode(error);
    if (detail === null) throw error;
    const found =
      detail === "ELOCKED"
        ? problem("out-busy", whole(folder), { path: folder })
        : problem("case-unusable", whole(folder), { path: folder, detail });
    return { value: null, problems: [found] };
  }
}
