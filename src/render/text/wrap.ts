import LineBreaker from "linebreak";
import stringWidth from "string-width";
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
  const lines = linesOf(words.replace(counted, `$1${glue}`), columns - mark.length);
  return asParagraphs(lines.map((line) => line.replaceAll(glue, " ")))
    .map((line, index) => `${index === 0 ? mark : indent}${line}`.trimEnd())
    .join("\n");
};

/** How many columns a terminal or a mail program gives it: two to a Chinese character. */
export const widthOf = (text: string): number => stringWidth(text.replaceAll(glue, " "));

/** Lines begin where Unicode lets them (UAX #14): no line of Chinese begins with a comma. A word too long for a line is cut. */
function linesOf(words: string, width: number): string[] {
  const lines = [""];
  for (const piece of piecesOf(words).flatMap((one) => cut(one, width))) {
    const line = `${lines.at(-1)}${piece}`;
    if (widthOf(line.trimEnd()) <= width) lines[lines.length - 1] = line;
    else lines.push(piece);
  }
  return lines.map((line) => line.trimEnd());
}

/** What is between one place where a line may begin and the next; never a word cut at its hyphen. */
function piecesOf(words: string): string[] {
  const breaker = new LineBreaker(words);
  const pieces: string[] = [];
  let start = 0;
  for (let next = breaker.nextBreak(); next; next = breaker.nextBreak()) {
    if (/[\p{L}\p{N}]-$/u.test(words.slice(start, next.position)) && next.position < words.length) continue;
    pieces.push(words.slice(start, next.position));
    start = next.position;
  }
  return pieces;
}

function cut(piece: string, width: number): string[] {
  if (widthOf(piece.trimEnd()) <= width) return [piece];
  const parts = [""];
  for (const { segment } of new Intl.Segmenter(undefined, { granularity: "grapheme" }).segment(piece)) {
    const longer = `${parts.at(-1)}${segment}`;
    if (widthOf(longer) <= width) parts[parts.length - 1] = longer;
    else parts.push(segment);
  }
  return parts;
}
