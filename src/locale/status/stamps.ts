import type { Locales } from "../locales.js";
import { type Reviewer, reviewers, type SentenceStatus, type Stamp } from "./kinds.js";

/** "handout:ring.title": "3f2a9c0166 9b1c22aa04 nobody" */
export const stampsOf = ({ texts }: Locales, tag: string): Record<string, Stamp> =>
  Object.fromEntries(
    Object.entries(JSON.parse(texts[`locales/${tag}/status.json`] ?? "{}") as Record<string, string>).map(
      ([name, line]): [string, Stamp] => {
        const [from = "", words = "", by = ""] = line.split(" ");
        return [name, { from, words, by: reviewers.find((reviewer) => reviewer === by) ?? "nobody" }];
      },
    ),
  );

/**
 * Stamps the sentences whose words are new or have changed since their last stamp as made from the source as it is now, and
 * those named as still right. by: who has read all that is now fresh; without it, changed words have been read by nobody.
 * Returns the file's text, and the stale sentences that were left as they are.
 */
export function stamped(
  statuses: readonly SentenceStatus[],
  before: Record<string, Stamp>,
  { stillRight = [], by }: { stillRight?: readonly string[]; by?: Reviewer } = {},
): { text: string; left: string[] } {
  const there = statuses.filter(({ words }) => words !== null);
  const fresh = (one: SentenceStatus) =>
    !one.stale || before[one.name]?.words !== one.words || stillRight.includes(one.name);
  const lines = there.flatMap((one) => {
    const stamp = fresh(one) ? { from: one.from, words: one.words ?? "", by: by ?? one.by } : before[one.name];
    return stamp ? [[one.name, `${stamp.from} ${stamp.words} ${stamp.by}`]] : [];
  });
  return {
    text: `${JSON.stringify(Object.fromEntries(lines), null, 2)}\n`,
    left: there.filter((one) => !fresh(one)).map(({ name }) => name),
  };
}
