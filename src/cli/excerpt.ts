import stringWidth from "string-width";
import { printable } from "./printable.js";

/** A line of source and, under it, carets below the exact words. */
export type Excerpt = { text: string; carets: string };

/** One character as the reader sees it: where it stands in the line, how it prints, how many columns it takes. */
type Cell = { start: number; end: number; text: string; width: number };

const tabStop = 4;
const cut = "…";

/**
 * The line with carets under length characters (UTF-16 units) from column, which counts from 1.
 * Tabs are spread to stops of four, wide and combining characters take the columns a terminal gives them, and a line
 * wider than room is cut around the carets.
 */
export function excerpt(line: string, column: number, length: number, room: number): Excerpt {
  const far = 8 * room; // A line may be a megabyte long: look no further than could be shown.
  const start = Math.max(0, column - 1 - far);
  const cells = cellsOf(line.slice(start, column - 1 + far));
  const from = column - 1 - start;

  const begin = cells.filter(({ end }) => end <= from).length;
  const end = Math.max(begin + 1, cells.filter(({ start }) => start < from + length).length);
  const [left, right] = seen(cells, begin, room);
  const before = left > 0 ? cut : "";
  const after = right < cells.length ? cut : "";
  const indent = before.length + widthOf(cells.slice(left, begin));
  const under = Math.max(1, widthOf(cells.slice(begin, Math.min(end, right))));
  return {
    text: (before + textOf(cells.slice(left, right)) + after).trimEnd(),
    carets: " ".repeat(indent) + "^".repeat(under),
  };
}

/** Which cells to show: all, or as many as there is room for, a third of it before the carets. */
function seen(cells: Cell[], begin: number, room: number): [number, number] {
  if (widthOf(cells) <= room) return [0, cells.length];
  let left = begin;
  while (left > 0 && widthOf(cells.slice(left - 1, begin)) <= room / 3) left--;
  let right = left;
  while (right < cells.length && widthOf(cells.slice(left, right + 1)) <= room - 2 * cut.length) right++;
  return [left, right];
}

function cellsOf(line: string): Cell[] {
  let column = 0;
  return [...new Intl.Segmenter().segment(line)].map(({ segment, index }) => {
    const text = segment === "\t" ? " ".repeat(tabStop - (column % tabStop)) : printable(segment);
    const width = stringWidth(text);
    column += width;
    return { start: index, end: index + segment.length, text, width };
  });
}

const textOf = (cells: Cell[]): string => cells.map(({ text }) => text).join("");
const widthOf = (cells: Cell[]): number => cells.reduce((sum, { width }) => sum + width, 0);
