import { explain } from "#index.js";
import type { Problem } from "#problems/problem.js";
import type { Desk } from "./desk.js";
import { printable } from "./printable.js";

type Subject = { folder: string; caseId: string; revision: number; language: string };

/**
 * The language of whoever sits at the desk, where no plan tells: the system's ("pt_BR.UTF-8" is pt-BR), or English. LC_ALL goes
 * before LC_MESSAGES, and that before LANG (POSIX, 8.2).
 */
export function deskLanguage(env: NodeJS.ProcessEnv = process.env): string {
  const named = env["LC_ALL"] || env["LC_MESSAGES"] || env["LANG"] || "";
  const [, language, region] = /^([a-z]{2,3})(?:[_-]([A-Z]{2}))?(?=[.@]|$)/.exec(named) ?? [];
  return language ? [language, ...(region ? [region] : [])].join("-") : "en";
}

/**
 * Says what happened, in a line, and what to do about it under it. What came of a subject is a result and goes to standard
 * output; all else to standard error. With --json both are JSON Lines without words that name anybody.
 */
export const sayer =
  ({ house, terminal, json }: Desk) =>
  (found: Problem, subject?: Subject): void => {
    const { what, hint } = explain(found, house, deskLanguage());
    const { code, severity } = found;
    const to = subject ? terminal.out : terminal.err;
    if (json) {
      const about = subject && {
        package: subject.folder,
        caseId: subject.caseId,
        revision: subject.revision,
        language: subject.language,
      };
      to(JSON.stringify({ code, severity, ...about, what, hint }));
      return;
    }
    to(printable(what));
    if (hint) terminal.err(`  = ${printable(hint)}`);
  };
