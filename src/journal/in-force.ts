import type { Built, Entry } from "./entry.js";

/** What the owner had been given by the end of a day: the paper in force, the letters sent with it, and all that it replaces. */
export type InForce = { paper: Built; sent: Extract<Entry, { what: "sent" }>[]; before: Built[] };

/**
 * The last paper that was made by the end of a day; of two revisions the later one, for an old one that is printed again takes
 * no new one's place. Null where nothing had been made. day: "2026-03-04".
 */
export function inForce(entries: readonly Entry[], day: string): InForce | null {
  const until = entries.filter(({ on }) => on <= day);
  const built = until.filter((entry) => entry.what === "built");
  const newest = Math.max(...built.map(({ revision }) => revision));
  const paper = built.findLast(({ revision }) => revision === newest);
  if (!paper) return null;
  const sent = until.flatMap((entry) => (entry.what === "sent" && entry.revision === newest ? [entry] : []));
  return { paper, sent, before: built.filter((one) => one !== paper) };
}
