/** stop: cannot be built. ask: builds only with a reason, kept in the record. note: worth a look. */
export type Severity = "stop" | "ask" | "note";

/** What a sentence may need to be worded: days and amounts of money are put into words by the locale. */
export type Value = string | number | readonly string[] | { day: string } | { minor: number; currency: string };
export type Values = Record<string, Value>;

/**
 * A kind of problem: how grave it is, and (in its type only) which values its sentence needs. names: the values that a
 * reason for going on must name, so that a reason given for one thing never answers for another.
 */
export type Kind<V extends Values> = {
  severity: Severity;
  names: readonly (keyof V & string)[];
  readonly values?: V;
};

const kind =
  (severity: Severity) =>
  <V extends Values>(...names: (keyof V & string)[]): Kind<V> => ({ severity, names });

export const stop = kind("stop");
/** ask("medicine", "given"): a reason must say for what. ask(): one is enough that stands alone. */
export const ask = kind("ask");
export const note = kind("note");
