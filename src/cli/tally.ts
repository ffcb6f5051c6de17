import { explain } from "#index.js";
import { problem } from "#problems/problem.js";
import type { Desk } from "./desk.js";
import { type ExitCode, worse } from "./exit-code.js";

/** How all plans of a command have fared so far. */
export type Tally = { ready: number; stopped: number; code: ExitCode; language: string };

export const noPlans: Tally = { ready: 0, stopped: 0, code: 0, language: "en" };

export const count = (tally: Tally, { language }: { language: string }, code: ExitCode): Tally => ({
  ready: tally.ready + (code === 0 ? 1 : 0),
  stopped: tally.stopped + (code === 0 ? 0 : 1),
  code: worse(tally.code, code),
  language,
});

/** Says how several plans have fared, in one line; one plan alone has been spoken of. */
export function sum({ house, terminal, json }: Desk, { ready, stopped, language }: Tally): void {
  const plans = ready + stopped;
  if (json || plans < 2) return;
  const at = { file: "", line: 1, column: 1, length: 1 };
  terminal.err(explain(problem("plans-done", at, { plans, ready, stopped }), house, language).what);
}
