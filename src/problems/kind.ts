/** stop: cannot be built. ask: builds only with a reason, kept in the record. note: worth a look. */
export type Severity = "stop" | "ask" | "note";

/** What a sentence may need to be worded: days and amounts of money are put into words by the locale. */
export type Value = string | number | readonly string[] | { day: string } | { minor: number; currency: string };
export type Values = Record<string, Value>;

/** A kind of problem: how grave it is, and (in its type only) which values its sentence needs. */
export type Kind<V extends Values> = { severity: Severity; readonly values?: V };

const kind =
  (severity: Severity) =>
  <V extends Values>(): Kind<V> => ({ severity });

export const stop = kind("stop");
export const ask = kind("ask");
export const note = kind("note");
