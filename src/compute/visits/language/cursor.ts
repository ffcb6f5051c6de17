import { nearest } from "#problems/near.js";
import { type Place, within } from "#problems/place.js";
import { type Problem, problem } from "#problems/problem.js";
import type { Said } from "./line.js";
import { type Token, tokensOf } from "./tokens.js";

/** Thrown inside the parser at the first words of a line that cannot be understood, and caught at the line. */
export class Misread extends Error {
  constructor(readonly problem: Problem) {
    super(problem.code);
  }
}

/** Reads a line from left to right. Every word it was asked for at a spot is kept, to say what could have stood there. */
export type Cursor = ReturnType<typeof cursorOver>;

export function cursorOver(line: string, at: Place) {
  const tokens = tokensOf(line);
  let next = 0;
  let asked: string[] = [];

  const placeOfTokens = (first: Token, last: Token) =>
    within(at, first.offset, last.offset + last.length - first.offset);

  const cursor = {
    at,
    peek: (ahead = 0): Token | undefined => tokens[next + ahead],
    position: () => next,
    moveTo(position: number) {
      if (position !== next) asked = [];
      next = position;
    },
    /** Steps over the words, if they are the next ones. */
    take(...words: string[]): boolean {
      asked.push(words.join(" "));
      if (!words.every((word, i) => tokens[next + i]?.text === word)) return false;
      cursor.moveTo(next + words.length);
      return true;
    },
    takeOneOf: (...words: string[]): boolean => words.some((word) => cursor.take(word)),
    takeNumber(): number | null {
      const token = tokens[next];
      if (token?.kind !== "number") return null;
      cursor.moveTo(next + 1);
      return token.value;
    },
    /** What was read since a position, with its place. */
    said<T>(from: number, value: T): Said<T> {
      const first = tokens[from];
      const last = tokens[Math.max(from, next - 1)];
      if (!first || !last) return { value, text: line, at };
      return { value, text: line.slice(first.offset, last.offset + last.length), at: placeOfTokens(first, last) };
    },
    fail(fault: Problem): never {
      throw new Misread(fault);
    },
    /** The line stops short, where one of these was to come. */
    unfinished: (expected: string[]): never =>
      cursor.fail(problem("course-line-unfinished", within(at, line.trimEnd().length, 1), { expected })),
    /** The next word makes no sense here, or the line stops short. */
    lost(...expected: string[]): never {
      const token = tokens[next];
      const wanted = [...new Set([...expected, ...asked])];
      if (!token) return cursor.unfinished(wanted.slice(0, 6));
      const given = line.slice(token.offset, token.offset + token.length);
      const near = nearest(given, wanted);
      return cursor.fail(
        problem("course-word-unknown", placeOfTokens(token, token), { given, near, expected: wanted.slice(0, 6) }),
      );
    },
  };
  return cursor;
}
