import { isAlias, isMap, isScalar, isSeq, LineCounter, type Node, parseDocument, type YAMLError } from "yaml";
import type { Place, Places } from "#problems/place.js";
import { type Problem, problem } from "#problems/problem.js";

/** Deeper than any plan; a file that nests further is not one. */
const deepest = 12;

/** Half of a pair of UTF-16 units, which an escape can hold and no file, code or font can (Unicode 16.0, D75 to D77). */
const broken = /\p{Surrogate}/u;

export type Written = { data: unknown; places: Places; problems: Problem[] };

/**
 * Reads YAML (and so JSON) into plain data, with the place of every value.
 *
 * Scalars stay text, exactly as typed (the failsafe schema): the plan's schema, and nothing before it, decides that
 * 08:00 is a time, 250.00 a price and `no` a word. prefix goes before each path in places.
 */
export function readYaml(file: string, text: string, prefix = ""): Written {
  const lines = new LineCounter();
  const document = parseDocument(text, {
    schema: "failsafe",
    lineCounter: lines,
    prettyErrors: false,
    uniqueKeys: false,
  });
  const places: Places = {};
  const problems: Problem[] = [];

  const placeAt = (start: number, end: number): Place => {
    const { line, col } = lines.linePos(start);
    const written = text.slice(start, end).split("\n", 1)[0] ?? "";
    return { file, line: Math.max(1, line), column: Math.max(1, col), length: Math.max(1, written.length) };
  };
  const placeOfNode = (node: Node | null | undefined): Place => placeAt(node?.range?.[0] ?? 0, node?.range?.[1] ?? 1);

  const visit = (node: unknown, path: string, depth: number): unknown => {
    const at = placeOfNode(node as Node | null);
    places[path] = isScalar(node) ? insideQuotes(at, node.type) : at;
    if (depth > deepest) {
      problems.push(problem("nested-too-deep", at, { limit: deepest }));
      return undefined;
    }
    const inside = (key: string | number) => (path === "" ? `${key}` : `${path}/${key}`);
    if (isAlias(node)) {
      problems.push(problem("alias-not-allowed", at, {}));
      return undefined;
    }
    if (isSeq(node)) return node.items.map((item, i) => visit(item, inside(i), depth + 1));
    if (isMap(node)) {
      const entries = new Map<string, unknown>();
      for (const { key, value } of node.items) {
        const name = isScalar(key) ? String(key.value) : "";
        const keyPlace = placeOfNode(key as Node);
        if (entries.has(name)) problems.push(problem("field-twice", keyPlace, { field: name }));
        if (broken.test(name)) problems.push(problem("character-broken", keyPlace, {}));
        entries.set(name, value === null ? "" : visit(value, inside(name), depth + 1));
        places[`${inside(name)}/`] = keyPlace;
      }
      return Object.fromEntries(entries);
    }
    const words = isScalar(node) ? String(node.value ?? "") : "";
    if (broken.test(words)) problems.push(problem("character-broken", at, {}));
    return words;
  };

  const syntax = ({ pos: [start, end], message, indent }: Fault) => {
    const at = placeAt(start, Math.max(end, start + 1));
    return indent === null
      ? problem("yaml-syntax", at, { detail: message })
      : problem("yaml-indent", at, { context: indent });
  };
  problems.push(...faultsOf(document.errors, text, (at) => lines.linePos(at).line).map(syntax));
  const data = document.errors.length > 0 ? undefined : visit(document.contents, prefix, 0);
  return { data, places, problems };
}

/** Words inside quotes begin one column after the value does. */
const insideQuotes = (at: Place, type: string | undefined): Place =>
  type === "QUOTE_SINGLE" || type === "QUOTE_DOUBLE"
    ? { ...at, column: at.column + 1, length: Math.max(1, at.length - 2) }
    : at;

/** indent: where lines begin is what is wrong with it, by a "tab" or by the wrong "column"; null where it is something else. */
type Fault = { pos: [number, number]; message: string; indent: "tab" | "column" | null };

/**
 * What to tell of a text's errors. A line that begins in the wrong place makes the parser take the next for one key with it,
 * and the line after that: such errors, from line to line, are one, told where it begins. After a tab nothing else can be
 * trusted, so that tabs are told alone.
 */
function faultsOf(errors: readonly YAMLError[], text: string, lineOf: (at: number) => number): Fault[] {
  const faults: Fault[] = [];
  const tabs = errors.filter(({ code }) => code === "TAB_AS_INDENT");
  let reached = -1;
  for (const error of tabs.length > 0 ? tabs : errors) {
    const fault = faultOf(error, errors, text);
    const line = lineOf(fault.pos[0]);
    if (fault.indent === null || line > reached + 1) faults.push(fault);
    if (fault.indent !== null) reached = Math.max(line, lineOf(error.pos[1]));
  }
  return faults;
}

function faultOf({ code, pos, message }: YAMLError, errors: readonly YAMLError[], text: string): Fault {
  if (code === "TAB_AS_INDENT") return { pos, message, indent: "tab" };
  if (code === "BAD_INDENT" && message.startsWith("All ")) return { pos, message, indent: "column" };
  if (code === "MISSING_CHAR" && message.startsWith("Sequence item")) return { pos, message, indent: "column" };
  // Two keys on one line are a colon in words that need quotes; on several, lines that do not begin in the same column.
  const across = errors.find((other) => other.code === "MULTILINE_IMPLICIT_KEY" && other.pos[0] === pos[0]);
  if (!across || (code !== across.code && code !== "BLOCK_AS_IMPLICIT_KEY")) return { pos, message, indent: null };
  const next = /\n\s*/.exec(text.slice(pos[0]));
  const start = next ? pos[0] + next.index + next[0].length : pos[0];
  return { pos: [start, Math.max(start, across.pos[1])], message, indent: "column" };
}
