import { explain, type Topic, type TopicSheet, topicSheet, topics } from "#index.js";
import { nearest } from "#problems/near.js";
import { problem } from "#problems/problem.js";
import { type Desk, openDesk } from "./desk.js";
import type { ExitCode } from "./exit-code.js";
import { finder } from "./finder.js";
import { fold } from "./fold.js";
import { sayer } from "./say.js";

type Options = { language: string; json?: boolean };
const at = { file: "", line: 1, column: 1, length: 1 };

export async function tellTopics(options: Options): Promise<ExitCode> {
  const desk = await openDesk(options);
  list(desk, topics(desk.house, options.language));
  return 0;
}

function list({ terminal, json }: Desk, found: readonly Topic[]): void {
  for (const { id, species, name } of found)
    terminal.out(json ? JSON.stringify({ id, species, name }) : `${id}\t${species.join(", ")}\t${name}`);
}

/** One topic as staff would read it, or those that the words find. Problems: "topic-unknown". */
export async function tellTopic(name: string, options: Options): Promise<ExitCode> {
  const desk = await openDesk(options);
  const words = worded(desk, options.language);
  const sheet = topicSheet(desk.house, name.trim().toLowerCase(), options.language, words("name"));
  if (!sheet) {
    const all = topics(desk.house, options.language);
    const found = finder(all, ({ id, name, also }) => ({ seen: `${id} ${name}`, also }))(name);
    if (found.length > 0) {
      list(desk, found);
      return 0;
    }
    const known = all.map(({ id }) => id);
    sayer(desk)(problem("topic-unknown", at, { given: name, near: nearest(name, known), known }));
    return 2;
  }
  if (desk.json) desk.terminal.out(JSON.stringify(sheet));
  else for (const line of linesOf(sheet, words)) desk.terminal.out(wrapped(line));
  return 0;
}

type Words = (context: string, given?: string) => string;
const worded =
  ({ house }: Desk, language: string): Words =>
  (context, given = "") =>
    explain(problem("topic-sheet", at, { context, given }), house, language).what;

const parts = ["done", "steps", "now", "today", "visit", "normal", "avoid", "supplies", "ends"];

function linesOf(sheet: TopicSheet, words: Words): string[] {
  const needs = (["site", "bandage", "course", "collar"] as const).map((part) => words(part, words(sheet[part])));
  return [
    `${sheet.name} (${sheet.id})`,
    words("for", sheet.species.join(", ")),
    ...needs,
    ...sheet.oftenCourse.map((line) => words("usual", line)),
    ...(sheet.doubtful.length > 0 ? [words("doubtful", sheet.doubtful.join(", "))] : []),
    ...(sheet.oftenUntil ? [words("until", sheet.oftenUntil)] : []),
    ...parts.flatMap((part) => {
      const said = sheet.said.filter(({ of }) => of === part);
      return said.length > 0 ? ["", words(part), ...said.map(({ text }) => `  - ${text}`)] : [];
    }),
    "",
    words("source", sheet.source),
  ];
}

const wrapped = (line: string): string => fold(line, Math.min(process.stdout.columns ?? 80, 88), 4);
