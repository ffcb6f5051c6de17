import { explain } from "#index.js";
import { type Place, placeText } from "#problems/place.js";
import type { Problem } from "#problems/problem.js";
import { type Settled, subjectOf } from "#problems/settle.js";
import type { Case, Text } from "./case.js";
import type { Desk } from "./desk.js";
import { excerpt } from "./excerpt.js";
import { fold } from "./fold.js";
import { printable } from "./printable.js";
import type { Terminal } from "./terminal.js";

/**
 * A problem in words, with its place as the user counts lines and the line it is in, if there is one to show. for: what a
 * reason must say it is given for, if it must.
 */
type Told = Found & { at: Place; line: string | null; what: string; hint: string };
type Found = { problem: Problem; for: string | null; reason?: string };

/** Tells every problem of a case, in the order of its places: for people with the line it is in, or as JSON Lines. */
export function report({ house, terminal, json }: Desk, one: Case, { open, allowed, notes }: Settled): void {
  const asked = [...open, ...allowed.map(({ problem }) => problem)];
  const found: Found[] = [
    ...[...open, ...notes].map((problem) => ({ problem, for: forOf(problem, asked) })),
    ...allowed.map((one) => ({ ...one, for: forOf(one.problem, asked) })),
  ];
  const sources = one.texts.map(linesOf);
  const order = (at: Place) => [sources.findIndex(({ file }) => file === at.file), at.line, at.column];
  for (const each of found.sort((a, b) => compare(order(a.problem.at), order(b.problem.at)))) {
    const { at } = each.problem;
    const source = sources.find(({ file }) => file === at.file);
    const told = {
      ...each,
      ...explain(each.problem, house, one.language),
      at: { ...at, line: at.line + (source?.firstLine ?? 1) - 1 },
      line: source?.lines[at.line - 1] ?? null,
    };
    terminal.err(json ? asJson(one, told) : asText(told, terminal));
  }
}

const forOf = (problem: Problem, asked: readonly Problem[]) =>
  problem.severity === "ask" ? subjectOf(problem, asked) : null;

/** A file that is no text has no lines to show. */
const linesOf = ({ file, firstLine, bytes }: Text) => ({
  file,
  firstLine,
  lines: bytes.includes(0) ? [] : new TextDecoder().decode(bytes).split(/\r?\n/),
});

const compare = (a: readonly number[], b: readonly number[]): number =>
  a.map((number, i) => number - (b[i] ?? 0)).find((difference) => difference !== 0) ?? 0;

function asJson({ name }: Case, { problem: { code, severity, values }, at, what, hint, ...told }: Told): string {
  return JSON.stringify({ plan: name, code, severity, ...at, values, what, hint, for: told.for, reason: told.reason });
}

const colours = { stop: "red", ask: "yellow", note: "cyan" } as const;

const asText = (found: Told, terminal: Terminal): string =>
  found.reason === undefined ? openText(found, terminal) : allowedText(found, terminal);

function openText({ problem: { code, severity }, at, line, ...told }: Told, terminal: Terminal): string {
  const { style, width } = terminal;
  const gutter = " ".repeat(String(at.line).length);
  const under = gutter.length + 4;
  const kind = style(["bold", colours[severity]], `${severity}[${code}]`);
  const shown = line?.trim() ? excerpt(line, at.column, at.length, width - gutter.length - 4) : null;
  return [
    whole(`${style("bold", printable(placeText(at)))}: ${kind}: ${printable(told.what)}`, under, terminal),
    ...(shown ? [` ${at.line} | ${shown.text}`, ` ${gutter} | ${style(colours[severity], shown.carets)}`] : []),
    ...(told.hint ? [` ${gutter} = ${whole(printable(told.hint), under, terminal)}`] : []),
    ...(severity === "ask" ? [` ${gutter} = allow: ${printable(allowText(code, told.for))}`] : []),
  ].join("\n");
}

/** Words are not cut at the edge of a terminal. */
const whole = (line: string, indent: number, { seen, width }: Terminal): string =>
  seen ? fold(line, width, indent) : line;

/** Settled: what it is, and the reason that was given, without what to do about it. */
function allowedText({ problem: { code }, at, what, reason = "" }: Told, terminal: Terminal): string {
  const gutter = " ".repeat(String(at.line).length);
  const told = `${printable(placeText(at))}: allowed[${code}]: ${printable(what)}`;
  const under = gutter.length + 4;
  const lines = [whole(told, under, terminal), ` ${gutter} = ${whole(printable(reason), under, terminal)}`];
  return terminal.style("dim", lines.join("\n"));
}

/** The reason as it would have to be written in a plan. */
const allowText = (code: string, subject: string | null): string => {
  const named = subject === null ? "" : `, for: ${JSON.stringify(subject)}`;
  return `[{ problem: ${code}${named}, reason: ... }]`;
};
