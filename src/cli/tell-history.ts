import { explain } from "#index.js";
import { keptPath } from "#io/case-folder.js";
import type { Built, Entry } from "#journal/entry.js";
import { inForce } from "#journal/in-force.js";
import { type Problem, problem } from "#problems/problem.js";
import { openCase } from "./case-folder.js";
import { type Desk, openDesk } from "./desk.js";
import type { ExitCode } from "./exit-code.js";
import type { HistoryOptions } from "./options.js";
import { printable } from "./printable.js";
import { deskLanguage, sayer } from "./say.js";

const at = { file: "", line: 1, column: 1, length: 1 };

/** Tells what happened in a case, or what its owner had on a day. */
export async function tellHistory(folder: string, { on, ...options }: HistoryOptions): Promise<ExitCode> {
  const desk = await openDesk(options);
  const { value: entries, problems } = await openCase(folder);
  for (const found of problems) sayer(desk)(found);
  if (!entries) return problems.some(({ code }) => code === "case-journal-edited") ? 1 : 2;
  if (on === undefined) for (const entry of entries) tellEntry(desk, entry);
  else tellDay(desk, folder, entries, on);
  return 0;
}

function tellDay(desk: Desk, folder: string, entries: readonly Entry[], day: string): void {
  const found = inForce(entries, day);
  if (!found) {
    tell(desk, problem("history-nothing", at, { asked: { day } }));
    return;
  }
  const { paper, sent } = found;
  const { revision, on, files } = paper;
  const paths = files.map(({ name, sha256 }) => ({ name, path: keptPath(folder, name, sha256) }));
  if (desk.json) {
    desk.terminal.out(JSON.stringify({ on: day, ...found, before: found.before.length, paths }));
    return;
  }
  tell(desk, problem("history-in-force", at, { asked: { day }, revision, day: { day: on }, languages: spoken(paper) }));
  for (const { name, path } of paths) desk.terminal.out(printable(`  ${name}  ${path}`));
  for (const entry of sent) tellEntry(desk, entry);
}

function tellEntry(desk: Desk, entry: Entry): void {
  const { revision, on, what } = entry;
  const paper = { revision, day: { day: on } };
  if (desk.json) desk.terminal.out(JSON.stringify(entry));
  else if (what === "visited") tell(desk, problem("history-visited", at, paper));
  else if (what === "sent")
    tell(desk, problem("history-sent", at, { ...paper, to: entry.to, language: entry.language }));
  else {
    const files = entry.files.map(({ name }) => name).join(", ");
    tell(desk, problem("history-built", at, { ...paper, files, languages: spoken(entry) }));
  }
}

/** "es (not reviewed)" */
const spoken = ({ languages }: Built): string =>
  languages.map(({ language, review }) => `${language} (${review})`).join(", ");

function tell({ house, terminal }: Desk, found: Problem): void {
  terminal.out(printable(explain(found, house, deskLanguage()).what));
}
