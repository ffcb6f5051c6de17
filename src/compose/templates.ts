import Handlebars from "handlebars";
import type { Locales } from "#locale/locales.js";
import { type Outcome, type Problem, problem, stops } from "#problems/problem.js";
import { checkTemplates, type Parsed } from "./check-template.js";
import { helperNames } from "./helpers/helpers.js";
import { rewrite } from "./rewrite.js";
import type { Compiled } from "./run.js";

/** What a page may be: the whole handout, its short form on one page, or its estimate alone. Its first template is of the same name. */
export type Document = "handout" | "first-page" | "estimate";

/**
 * The templates of the documents, checked and compiled once, ready for any number of pages. texts: as they were opened, by
 * path. own: those a clinic has laid over ours (./override.ts), each with the file it came from, and ours alone.
 */
export type Templates = {
  texts: Record<string, string>;
  compiled: Compiled;
  own: { files: Record<string, string>; ours: Compiled } | null;
};

export const root = "handout/handout";

/**
 * Parses and checks templates. files: text by path, "templates/handout/ring.hbs", whose name is then "handout/ring".
 * locales: a key must have words in the source, and in its variants.
 */
export function openTemplates(files: Record<string, string>, locales: Locales): Outcome<Templates> {
  const { parsed, problems } = parseTemplates(
    Object.entries(files).flatMap(([file, text]) => {
      const name = templateName(file);
      return name === null ? [] : [{ name, file, text }];
    }),
  );
  problems.push(...checkTemplates(parsed, root, locales));
  if (stops(problems)) return { value: null, problems };
  return { value: { texts: files, compiled: compileTemplates(parsed), own: null }, problems };
}

/** "templates/handout/ring.hbs" is "handout/ring"; null for what is no template. */
export const templateName = (path: string): string | null => /(?:^|\/)templates\/(.+)\.hbs$/.exec(path)?.[1] ?? null;

/** file: the name to tell problems by. */
export type TemplateText = { name: string; file: string; text: string };

/** The syntax trees of those that can be read. */
export function parseTemplates(texts: readonly TemplateText[]): { parsed: Parsed; problems: Problem[] } {
  const problems: Problem[] = [];
  const parsed: Parsed = {};
  for (const { name, file, text } of texts) {
    const program = parse(file, text, problems);
    if (program) parsed[name] = { file, program };
  }
  return { parsed, problems };
}

function parse(file: string, text: string, problems: Problem[]): hbs.AST.Program | null {
  try {
    return Handlebars.parse(text, { srcName: file });
  } catch (error) {
    const detail = error instanceof Error ? error.message : String(error);
    const [, line = "1"] = /line (\d+)/.exec(detail) ?? [];
    const [, column = "0"] = /:(\d+)$/.exec(detail) ?? [];
    const place = { file, line: Number(line), column: Number(column) + 1, length: 1 };
    problems.push(problem("template-syntax", place, { detail: detail.split("\n").at(-1) ?? detail }));
    return null;
  }
}

/** Makes them ready to run, once they are checked; their trees are changed by it. */
export function compileTemplates(parsed: Parsed): Compiled {
  const options: CompileOptions = {
    knownHelpers: Object.fromEntries(helperNames.map((name) => [name, true])) as NonNullable<
      CompileOptions["knownHelpers"]
    >,
    knownHelpersOnly: true,
    noEscape: true,
    preventIndent: true,
  };
  return Object.fromEntries(
    Object.entries(parsed).map(([name, { program }]) => [name, Handlebars.compile(rewrite(program), options)]),
  );
}
