import { format } from "date-fns/format";
import type { Outcome, Problem } from "#index.js";
import { readLedger } from "#io/ledger.js";
import type { Entry } from "#journal/entry.js";
import { readEntry } from "#send/dispatch.js";
import { addToCase, openCase } from "./case-folder.js";
import type { Letter } from "./letters.js";

/** A case folder, and whose case it is. */
type Kept = { folder: string; caseId: string };

/** The cases that folders hold. Problems: those of openCase. */
export async function casesOf(folders: readonly string[]): Promise<Outcome<Kept[]>> {
  const opened = await Promise.all(folders.map(async (folder) => ({ folder, ...(await openCase(folder)) })));
  const problems = opened.flatMap((one) => one.problems);
  const cases = opened.flatMap(({ folder, value }) => (value?.[0] ? [{ folder, caseId: value[0].case }] : []));
  return { value: problems.length > 0 ? null : cases, problems };
}

/**
 * Notes in each case what the ledger says its owner was sent, each letter once: also one that was sent just before the tool was
 * killed, as soon as the same command runs again.
 */
export async function noteSent(cases: readonly Kept[], letters: readonly Letter[], ledger: string): Promise<Problem[]> {
  if (cases.length === 0) return [];
  const sent = (await readLedger(ledger))
    .flatMap((line) => readEntry(line) ?? [])
    .filter(({ state }) => state === "sent");
  const problems: Problem[] = [];
  for (const { folder, caseId } of cases) {
    const own = letters.filter((letter) => letter.caseId === caseId);
    const entries = own.flatMap((letter): Entry[] => {
      const at = sent.find(({ key }) => key === letter.key)?.at;
      if (at === undefined) return [];
      const { revision, to, language, sha256 } = letter;
      const on = format(new Date(at), "yyyy-MM-dd");
      return [{ what: "sent", at, on, case: caseId, revision, to, language, letter: sha256 }];
    });
    const added = await addToCase(folder, caseId, [], (before) => {
      const known = (entry: Entry) =>
        before.some(
          (one) => one.what === "sent" && entry.what === "sent" && one.to === entry.to && one.at === entry.at,
        );
      return entries.filter((entry) => !known(entry));
    });
    problems.push(...added.problems);
  }
  return problems;
}
