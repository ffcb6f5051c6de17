import { createHash } from "node:crypto";
import { type Outcome, problem } from "#problems/problem.js";
import { type Entry, entrySchema } from "./entry.js";

/** Where the first line hangs. */
const start = "hearthsheet-case/1";

/**
 * The journal of a case: one line for each thing that happened, the oldest first. Each line has a sum over itself and the sum of
 * the line before, so that a line that is edited, taken out or put in shows where. It keeps a slip from passing for the truth;
 * it is no seal against somebody who means to forge it.
 * Problem: "case-journal-edited", at the first line that is not as it was written.
 */
export function readJournal(file: string, text: string): Outcome<Entry[]> {
  const entries: Entry[] = [];
  const lines = text.split("\n");
  const end = lines.pop();
  let before = start;
  for (const [i, line] of [...lines, ...(end ? [end] : [])].entries()) {
    const read = i < lines.length ? readLine(line, before) : null;
    if (!read) {
      const at = { file, line: i + 1, column: 1, length: Math.max(1, line.length) };
      return { value: null, problems: [problem("case-journal-edited", at, { path: file, line: i + 1 })] };
    }
    entries.push(read.entry);
    before = read.sum;
  }
  return { value: entries, problems: [] };
}

/** The journal with one more line. */
export const withEntry = (text: string, entry: Entry): string => {
  const last = text.trimEnd().split("\n").at(-1);
  return `${text}${lineOf(entry, last ? sumIn(last) : start)}\n`;
};

const lineOf = (entry: Entry, before: string): string => {
  const body = JSON.stringify(entry);
  return `${body.slice(0, -1)},"sum":"${sumOf(body, before)}"}`;
};

const sumOf = (body: string, before: string): string => createHash("sha256").update(before).update(body).digest("hex");
const sumIn = (line: string): string => /,"sum":"([0-9a-f]{64})"\}$/.exec(line)?.[1] ?? "";

function readLine(line: string, before: string): { entry: Entry; sum: string } | null {
  const sum = sumIn(line);
  const body = `${line.slice(0, line.length - sum.length - ',"sum":""}'.length)}}`;
  if (sum === "" || sum !== sumOf(body, before)) return null;
  try {
    return { entry: entrySchema.parse(JSON.parse(body)), sum };
  } catch {
    return null;
  }
}
