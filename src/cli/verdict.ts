import { explain } from "#index.js";
import { problem } from "#problems/problem.js";
import type { Settled } from "#problems/settle.js";
import type { Case } from "./case.js";
import type { Desk } from "./desk.js";
import { printable } from "./printable.js";

/** Whether a plan can be built, and how many problems of each kind it has. */
export type Verdict = { ready: boolean; stop: number; ask: number; note: number; allowed: number };

export function verdictOn({ open, allowed, notes }: Settled): Verdict {
  const stop = open.filter(({ severity }) => severity === "stop").length;
  return {
    ready: open.length === 0,
    stop,
    ask: open.length - stop,
    note: notes.length,
    allowed: allowed.length,
  };
}

/** The verdict in one line. */
export function verdictLine({ house }: Desk, { name, language }: Case, verdict: Verdict): string {
  const at = { file: name, line: 1, column: 1, length: 1 };
  const values = { ...verdict, plan: name };
  const said = verdict.ready ? problem("plan-ready", at, values) : problem("plan-not-ready", at, values);
  return printable(explain(said, house, language).what);
}
