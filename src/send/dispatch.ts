import { createHash } from "node:crypto";

/** One letter on its way: whose case, which revision, to whom. */
export type Dispatch = { caseId: string; revision: number; address: string };

/**
 * A line of the ledger. handing: all but the end of the message is on its way, and the end comes next; sent: the server has
 * taken it; refused: it has said no. A letter that was never handed over leaves no line, and can be tried again.
 */
export type Entry = { key: string; state: "handing" | "sent" | "refused"; at: string };

/** new: may be sent. sent: it was. unsure: the server may have it; only somebody who looks there can tell. */
export type Standing = "new" | "sent" | "unsure";

/** One person and one revision of one case, whatever the language or the paper; it names nobody. */
export const keyOf = ({ caseId, revision, address }: Dispatch): string =>
  createHash("sha256")
    .update(JSON.stringify([caseId, revision, address.toLowerCase()]))
    .digest("hex");

/** How a letter stands by the lines of the ledger, oldest first. Once sent it stays sent. */
export function standing(entries: readonly Entry[], key: string): Standing {
  const own = entries.filter((entry) => entry.key === key);
  if (own.some(({ state }) => state === "sent")) return "sent";
  return own.at(-1)?.state === "handing" ? "unsure" : "new";
}

/** A line of the ledger as it was read, or null: the last one may be torn where the tool was killed while writing it. */
export function readEntry(line: string): Entry | null {
  try {
    const { key, state, at } = JSON.parse(line) as Partial<Record<keyof Entry, unknown>>;
    const known = state === "handing" || state === "sent" || state === "refused";
    return typeof key === "string" && typeof at === "string" && known ? { key, state, at } : null;
  } catch {
    return null;
  }
}
