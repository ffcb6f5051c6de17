import type { SentenceStatus } from "#locale/status/kinds.js";

/** Who has read a line: of all its sentences, the one that fewest have. */
export type State =
  | "not-translated"
  | "stale"
  | "nobody"
  | "fluent"
  | "own-words"
  | "clinic"
  | "qualified"
  | "original"
  | "values";

/** The first is what most needs a look. */
const order: State[] = [
  "not-translated",
  "stale",
  "nobody",
  "fluent",
  "own-words",
  "clinic",
  "qualified",
  "original",
  "values",
];

/** How a page's messages stand. byClinic: what the clinic has read itself. */
export type Known = {
  original: boolean;
  statuses: ReadonlyMap<string, SentenceStatus>;
  byClinic: ReadonlySet<string>;
};

/** keys: of messages, with their plural and context; "own-words" and "not-translated" are the clinician's own. */
export const stateOf = (keys: readonly string[], known: Known): State =>
  keys.reduce<State>((worst, key) => {
    const state = stateOfOne(key, known);
    return order.indexOf(state) < order.indexOf(worst) ? state : worst;
  }, "values");

function stateOfOne(key: string, { original, statuses, byClinic }: Known): State {
  if (key === "own-words" || key === "not-translated") return key;
  if (original) return "original";
  if (byClinic.has(key)) return "clinic";
  const status = statuses.get(key);
  if (!status || status.stale) return "stale";
  return status.by;
}

/** Whether somebody who can tell has read it. */
export const isRead = (state: State): boolean => state === "clinic" || state === "qualified" || state === "original";
