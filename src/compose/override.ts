import type { Locales } from "#locale/locales.js";
import { nearest } from "#problems/near.js";
import { type Outcome, type Problem, problem, stops } from "#problems/problem.js";
import { checkTemplates, type Parsed } from "./check-template.js";
import {
  compileTemplates,
  parseTemplates,
  root,
  type Templates,
  type TemplateText,
  templateName,
} from "./templates.js";

/** A template of a clinic's own. path: of the one of ours it stands for, "templates/handout/ring.hbs"; file: the name to tell problems by. */
export type OwnTemplate = { path: string; file: string; text: string };

/**
 * Lays a clinic's own templates over ours, each in the place of the one of its name. They are checked as ours are; what they
 * make of a plan is held to what ours make of it, once there is one (./held.ts). locales: with the clinic's own words.
 * Problems: "override-unknown", those of openTemplates, and the note "template-words-literal".
 */
export function overrideTemplates(
  ours: Templates,
  files: readonly OwnTemplate[],
  locales: Locales,
): Outcome<Templates> {
  const known = Object.keys(ours.texts).filter((path) => templateName(path) !== null);
  const [theirs, strange] = [true, false].map((is) => files.filter(({ path }) => known.includes(path) === is));
  const problems: Problem[] = (strange ?? []).map(({ path, file }) =>
    problem("override-unknown", { file, line: 1, column: 1, length: 1 }, { name: path, near: nearest(path, known) }),
  );
  const texts = (theirs ?? []).map(
    ({ path, file, text }): TemplateText => ({ name: templateName(path) ?? "", file, text }),
  );
  const replaced = new Set((theirs ?? []).map(({ path }) => path));
  const kept = known
    .filter((path) => !replaced.has(path))
    .map((path): TemplateText => ({ name: templateName(path) ?? "", file: path, text: ours.texts[path] ?? "" }));
  const { parsed, problems: unread } = parseTemplates([...texts, ...kept]);
  problems.push(...unread);
  if (unread.length === 0) problems.push(...checkTemplates(parsed, root, locales));
  const own: Parsed = Object.fromEntries(
    Object.entries(parsed).filter(([name]) => texts.some((one) => one.name === name)),
  );
  problems.push(...Object.values(own).flatMap(literalIn));
  if (stops(problems)) return { value: null, problems };
  const compiled = ours.own?.ours ?? ours.compiled;
  if (texts.length === 0) return { value: { ...ours, compiled, own: null }, problems };
  return {
    value: {
      texts: ours.texts,
      compiled: { ...compiled, ...compileTemplates(own) },
      own: { files: Object.fromEntries(texts.map(({ name, file }) => [name, file])), ours: compiled },
    },
    problems,
  };
}

/** Words that stand in a template itself: they are in one language, on a page in any. The first of them is told. */
function literalIn({ file, program }: Parsed[string]): Problem[] {
  const at = contentIn(program).flatMap(({ value, loc }) =>
    value.split("\n").flatMap((line, index) => {
      const found = isDirective.test(line) ? null : /\p{L}{2}.*/u.exec(line);
      const column = (index === 0 ? loc.start.column : 0) + 1 + (found?.index ?? 0);
      return found ? [{ words: found[0].trim(), line: loc.start.line + index, column }] : [];
    }),
  )[0];
  if (!at) return [];
  const { words, ...place } = at;
  return [problem("template-words-literal", { file, ...place, length: words.length }, { words })];
}

const isDirective = /^:{2,}/;

/** All that a template writes itself, whatever it stands in. */
function contentIn(program: hbs.AST.Program | undefined): hbs.AST.ContentStatement[] {
  return (program?.body ?? []).flatMap((statement) => {
    if (statement.type === "ContentStatement") return [statement as hbs.AST.ContentStatement];
    if (statement.type !== "BlockStatement") return [];
    const block = statement as hbs.AST.BlockStatement;
    return [...contentIn(block.program), ...contentIn(block.inverse)];
  });
}
