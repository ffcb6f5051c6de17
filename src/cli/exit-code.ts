import { caseKinds } from "#problems/case.js";
import { fileKinds } from "#problems/files.js";
import type { Problem } from "#problems/problem.js";

/** 0: done. 1: a plan has problems that stop it. 2: bad usage, or a file or folder that cannot be used. */
export type ExitCode = 0 | 1 | 2;

/** What the open problems of one plan mean for the shell. */
export function exitCodeOf(open: readonly Problem[]): ExitCode {
  if (open.some(({ code }) => Object.hasOwn({ ...fileKinds, ...caseKinds }, code))) return 2;
  return open.length > 0 ? 1 : 0;
}

export const worse = (a: ExitCode, b: ExitCode): ExitCode => (a > b ? a : b);
