import wrapAnsi from "wrap-ansi";
import { asParagraphs } from "./isolates.js";

/** Columns of a line of plain text in an e-mail (RFC 3676 asks for at most 78), with room left to be quoted. */
const columns = 72;
/** Stands for a space that must not end a line. No text holds it: `tidy` takes it out of what people wrote. */
const glue = "\ue000";
const longestHeldTogether = 24;

/** What a person wrote as part of one line: no line end, control character or run of spaces of its own. */
export const tidy = (words: string): string => words.replace(/[ \p{Cc}\u2028\u2029\ue000]+/gu, " ");

/** Words that stay on one line, as an amount and its unit should. */
export const together = (words: string): string =>
  words.length > longestHeldTogether ? words : words.replaceAll(" ", glue);

/** A number stays with the short word after it: "5 cm", "8:00 p.m.". */
const counted = /(\d) (?=\p{L}{1,3}(?![\p{L}]))/gu;

/** Lines of at most 72 columns. `mark` stands before the first; the others begin under its words. */
export const wrap = (words: string, mark = ""): string => {
  const indent = " ".repeat(mark.length);
  const wrapped = wrapAnsi(words.replace(counted, `$1${glue}`), columns - mark.length, { hard: true });
  return asParagraphs(wrapped.replaceAll(glue, " ").split("\n"))
    .map((line, index) => `${index === 0 ? mark : indent}${line}`.trimEnd())
    .join("\n");
};
