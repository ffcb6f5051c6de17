import Handlebars from "handlebars";
import type { Locales } from "#locale/locales.js";
import { type Outcome, type Problem, problem, stops } from "#problems/problem.js";
import { checkTemplates, type Parsed } from "./check-template.js";
import { helperNames, helpersOn } from "./helpers/helpers.js";
import type { Page } from "./page.js";
import { rewrite } from "./rewrite.js";

/** What a page may be: the whole handout, its short form on one page, or its estimate alone. Its first template is of the same name. */
export type Document = "handout" | "first-page" | "estimate";

/** The templates of the documents, checked and compiled once, ready for any number of pages. */
export type Templates = { markdownOf: (page: Page, document?: Document | "letter" | "labels") => string };

const root = "handout/handout";

/**
 * Parses and checks templates. files: text by path, "templates/handout/ring.hbs", whose name is then "handout/ring".
 * locales: a key must have words in the source, and in its variants.
 */
export function openTemplates(files: Record<string, string>, locales: Locales): Outcome<Templates> {
  const problems: Problem[] = [];
  const parsed: Parsed = {};
  for (const [file, text] of Object.entries(files)) {
    const [, name] = /(?:^|\/)templates\/(.+)\.hbs$/.exec(file) ?? [];
    if (name === undefined) continue;
    const program = parse(file, text, problems);
    if (program) parsed[name] = { file, program };
  }
  problems.push(...checkTemplates(parsed, root, locales));
  return stops(problems) ? { value: null, problems } : { value: compileAll(parsed), problems };
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

function compileAll(parsed: Parsed): Templates {
  const options: CompileOptions = {
    knownHelpers: Object.fromEntries(helperNames.map((name) => [name, true])) as NonNullable<
      CompileOptions["knownHelpers"]
    >,
    knownHelpersOnly: true,
    noEscape: true,
    preventIndent: true,
  };
  const compiled = Object.fromEntries(
    Object.entries(parsed).map(([name, { program }]) => [name, Handlebars.compile(rewrite(program), options)]),
  );
  return {
    markdownOf: (page, document = "handout") =>
      compiled[`${document}/${document}`]?.(page.view, { helpers: helpersOn(page), partials: compiled }) ?? "",
  };
}
