import type { Locales } from "#locale/locales.js";
import { nearest } from "#problems/near.js";
import type { Place } from "#problems/place.js";
import { type Problem, problem } from "#problems/problem.js";
import { containers } from "./block-nodes.js";
import { checkWords } from "./check-words.js";
import { helperNames } from "./helpers/helpers.js";
import { follow, isLost, type Scope } from "./scope.js";
import { choicesOf, itemOf, type Shape, viewShape } from "./shape.js";

/** Parsed templates by name ("handout/ring"), each with the file it came from. */
export type Parsed = Record<string, { file: string; program: hbs.AST.Program }>;

/**
 * Walks every template a page is made of, from the root, with the shape of what it sees: each path, helper, partial, word
 * and key of a locale must exist. Handlebars' own `strict` does not look inside if, each, with and lookup.
 */
export function checkTemplates(templates: Parsed, root: string, locales: Locales): Problem[] {
  const problems: Problem[] = [];
  const entered = new Set<string>();
  const enter = (name: string, context: Shape, around: readonly string[] = []) => {
    const template = templates[name];
    const visit = `${name} ${JSON.stringify(context)}`;
    if (!template || entered.has(visit)) return;
    entered.add(visit);
    walker({
      file: template.file,
      names: Object.keys(templates),
      around: [...around, name],
      locales,
      enter,
      report: (found) => problems.push(found),
    })(template.program, { contexts: [context], named: {} });
  };
  enter(root, viewShape);
  // A template nothing includes yet is checked as if the page included it.
  for (const name of Object.keys(templates))
    if (![...entered].some((visit) => visit.startsWith(`${name} `))) enter(name, viewShape);
  return problems;
}

type Walk = {
  file: string;
  names: string[];
  /** This template, and those it is included in, the outermost first. */
  around: readonly string[];
  locales: Locales;
  enter: (name: string, context: Shape, around: readonly string[]) => void;
  report: (found: Problem) => void;
};
type Call = hbs.AST.MustacheStatement | hbs.AST.SubExpression;

const isPath = (node: hbs.AST.Node): node is hbs.AST.PathExpression => node.type === "PathExpression";
const isWord = (node: hbs.AST.Node): node is hbs.AST.StringLiteral => node.type === "StringLiteral";

function walker({ file, names, around, locales, enter, report }: Walk) {
  const placeOf = ({ start }: hbs.AST.SourceLocation, length = 1, offset = 0): Place => ({
    file,
    line: start.line,
    column: start.column + 1 + offset,
    length: Math.max(1, length),
  });

  /** What Handlebars reads and no template of ours holds: it would go past these checks, or past the holes of a page. */
  const refuse = (construct: string, loc: hbs.AST.SourceLocation): void =>
    report(problem("template-construct", placeOf(loc, construct.length), { construct }));

  /** The shape of a path, or null (and a problem) where there is nothing of that name. */
  function pathShape(path: hbs.AST.PathExpression, scope: Scope): Shape | null {
    const found = follow(path, scope);
    if (!isLost(found)) return found;
    const before = path.original.lastIndexOf([found.name, ...path.parts.slice(found.at + 1)].join("."));
    const at = placeOf(path.loc, found.name.length, Math.max(0, before));
    report(
      problem("template-path-unknown", at, {
        path: path.original,
        near: nearest(found.name, found.known),
        known: found.known,
      }),
    );
    return null;
  }

  function expression(node: hbs.AST.Expression, scope: Scope): Shape | null {
    if (isPath(node)) return pathShape(node, scope);
    if (node.type === "SubExpression") call(node as hbs.AST.SubExpression, scope);
    return null;
  }

  /** A helper with what it is given; a path alone is a value. */
  function call(node: Call, scope: Scope): void {
    const { path, params, hash } = node;
    if (!isPath(path as hbs.AST.Node)) {
      refuse(path.type, path.loc);
      return;
    }
    const name = (path as hbs.AST.PathExpression).original;
    const isHelper = helperNames.includes(name);
    if (!isHelper && params.length === 0 && node.type === "MustacheStatement") {
      expression(path as hbs.AST.Expression, scope);
      for (const { value } of hash?.pairs ?? []) expression(value, scope);
      return;
    }
    if (!isHelper)
      report(
        problem("template-helper-unknown", placeOf(path.loc, name.length), { name, near: nearest(name, helperNames) }),
      );
    const shapes = params.map((param) => expression(param, scope));
    const values = (hash?.pairs ?? []).map(({ key, value }) => ({ key, value, shape: expression(value, scope) }));
    if (name === "is") choices(params, shapes[0] ?? null);
    if (name === "say") {
      const context = values.find(({ key }) => key === "context");
      const contexts = context ? wordsOf(context.value, context.shape) : null;
      words(
        params[0],
        keysOf(params.slice(0, 1), shapes),
        values.map(({ key }) => key),
        contexts,
      );
    }
    if (name === "words")
      words(
        params[0],
        keysOf(params, shapes),
        values.map(({ key }) => key),
        null,
      );
  }

  /** The words an expression can be, if they are known beforehand. */
  const wordsOf = (node: hbs.AST.Expression, shape: Shape | null): string[] | null =>
    isWord(node) ? [node.value] : shape === null ? null : choicesOf(shape);

  /** Every key a call can ask for, or null where that is only known when facts are. */
  function keysOf(params: hbs.AST.Expression[], shapes: (Shape | null)[]): string[] | null {
    let keys: string[] = [""];
    for (const [index, param] of params.entries()) {
      const parts = wordsOf(param, shapes[index] ?? null);
      if (parts === null) return null;
      const joint = index === 0 ? "" : index === 1 ? ":" : ".";
      keys = keys.flatMap((key) => parts.map((part) => `${key}${joint}${part}`));
    }
    return keys;
  }

  function words(
    first: hbs.AST.Expression | undefined,
    keys: string[] | null,
    given: string[],
    contexts: string[] | null,
  ) {
    if (!first) return;
    const at = placeOf(first.loc, first.loc.end.column - first.loc.start.column);
    for (const key of keys ?? []) for (const found of checkWords(locales, key, given, contexts, at)) report(found);
  }

  function choices([, ...words]: hbs.AST.Expression[], shape: Shape | null): void {
    const known = shape === null ? null : choicesOf(shape);
    if (known === null) return;
    for (const word of words)
      if (isWord(word) && !known.includes(word.value))
        report(
          problem("template-choice-unknown", placeOf(word.loc, word.value.length, 1), {
            given: word.value,
            choices: known,
          }),
        );
  }

  /** if and unless choose; each and with go into what they are given. */
  function block(node: hbs.AST.BlockStatement, scope: Scope): void {
    const { original: name, loc } = node.path;
    const [given, more] = node.params;
    const [pair] = node.hash?.pairs ?? [];
    if (pair) refuse(`${pair.key}=`, pair.loc);
    if (more) refuse(`#${name}`, more.loc);
    const shadow = (node.program?.blockParams ?? []).find((word) => helperNames.includes(word));
    if (shadow !== undefined) refuse(`as |${shadow}|`, node.loc);
    const shape = given ? expression(given, scope) : null;
    if (name === "each" || name === "with") {
      const inside = shape === null ? null : name === "each" ? itemOf(shape) : shape;
      if (shape !== null && inside === null && given)
        report(
          problem("template-not-a-list", placeOf(given.loc), { path: (given as hbs.AST.PathExpression).original }),
        );
      if (inside !== null) program(node.program, within(scope, inside, node.program?.blockParams ?? []));
    } else {
      if (name !== "if" && name !== "unless")
        report(problem("template-helper-unknown", placeOf(loc, name.length), { name, near: nearest(name, builtIn) }));
      program(node.program, scope);
    }
    program(node.inverse, scope);
  }

  const within = ({ contexts, named }: Scope, inside: Shape, [item, index]: string[]): Scope => ({
    contexts: [...contexts, inside],
    named: { ...named, ...(item ? { [item]: inside } : {}), ...(index ? { [index]: "number" } : {}) },
  });

  function partial({ name, params, hash, loc }: hbs.AST.PartialStatement, scope: Scope): void {
    const called = "original" in name ? String(name.original) : "";
    const [pair] = hash?.pairs ?? [];
    if (pair) refuse(`${pair.key}=`, pair.loc);
    const context = params[0] ? expression(params[0], scope) : scope.contexts.at(-1);
    if (!names.includes(called))
      report(
        problem("template-partial-unknown", placeOf(loc, called.length), {
          name: called,
          near: nearest(called, names),
        }),
      );
    else if (around.includes(called)) report(problem("template-cycle", placeOf(loc, called.length), { name: called }));
    else if (context) enter(called, context, around);
  }

  /** The directives a template may begin a line with. */
  function content({ value, loc }: hbs.AST.ContentStatement): void {
    for (const [index, line] of value.split("\n").entries()) {
      const sign = stray.exec(line)?.[0].codePointAt(0);
      if (sign !== undefined) {
        const at = { file, line: loc.start.line + index, column: 1, length: 1 };
        const construct = `U+${sign.toString(16).toUpperCase().padStart(4, "0")}`;
        report(problem("template-construct", at, { construct }));
      }
      const [, colons = "", name = ""] = /^(:{2,})([\w-]+)/.exec(line) ?? [];
      const known: readonly string[] = colons.length > 2 ? containers : ["section"];
      if (name && !known.includes(name)) {
        const at = { file, line: loc.start.line + index, column: 1, length: colons.length + name.length };
        report(
          problem("template-markup-unknown", at, {
            markup: `${colons}${name}`,
            known: known.map((name) => `${colons}${name}`),
          }),
        );
      }
    }
  }

  function program(node: hbs.AST.Program | undefined, scope: Scope): void {
    for (const statement of node?.body ?? []) {
      if (statement.type === "MustacheStatement") call(statement as hbs.AST.MustacheStatement, scope);
      else if (statement.type === "BlockStatement") block(statement as hbs.AST.BlockStatement, scope);
      else if (statement.type === "PartialStatement") partial(statement as hbs.AST.PartialStatement, scope);
      else if (statement.type === "ContentStatement") content(statement as hbs.AST.ContentStatement);
      else if (statement.type !== "CommentStatement") refuse(statement.type, statement.loc);
    }
  }

  return program;
}

const builtIn = ["if", "unless", "each", "with"];

/** Signs that are no words: what holes and traces are made of, what turns the order of a line, and halves of a character. */
const stray = /[\uE000-\uF8FF\u2800-\u28FF\u202A-\u202E\u2066-\u2069\p{Cs}]|(?![\t\r])\p{Cc}/u;
