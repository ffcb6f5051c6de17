import { explain, type Reading } from "#index.js";
import { problem } from "#problems/problem.js";
import type { Case } from "./case.js";
import type { Desk } from "./desk.js";
import { printable } from "./printable.js";

/** What a page scored, a line a formula; with --json one object with every score. */
export function readingLines({ house, json }: Desk, { name, language }: Case, reading: Reading): string[] {
  const { problems, ...measured } = reading;
  if (json) return [JSON.stringify({ plan: name, reading: measured, hard: problems.length })];
  const at = { file: name, line: 1, column: 1, length: 1 };
  return reading.scores.map(({ measure, score, limit, aim }) => {
    const values = { plan: name, language: reading.language, measure, score, limit, aim };
    return printable(explain(problem("page-read", at, values), house, language).what);
  });
}
