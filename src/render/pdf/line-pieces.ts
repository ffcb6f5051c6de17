import type { Line, Run } from "./lines.js";
import { tickBox } from "./marks.js";
import type { Mark, Piece, What } from "./piece.js";

/** The marks of a line whose left end is at x and whose top is at y. */
export const lineMarks = (line: Line, x: number, y: number): Mark[] =>
  line.runs.map((run) => runMark(run, x, y + line.baseline));

const runMark = (run: Run, x: number, baseline: number): Mark => {
  if (run.kind === "tick") return tickBox(x + run.x, baseline, run.width, run.style, run.tag);
  const { width, text, style, tabular, direction, tag } = run;
  return { kind: "text", x: x + run.x, y: baseline, width, text, style, tabular, direction, tag };
};

/** One piece a line. The first two lines stay together and the last two do: no line of a paragraph stands alone. */
export function linePieces(lines: Line[], column: { x: number; width: number }, what: What): Piece[] {
  return lines.map((line, index) => ({
    what,
    ...column,
    height: line.height,
    before: 0,
    keep: index < lines.length - 1 && (index === 0 || index === lines.length - 2),
    marks: lineMarks(line, column.x, 0),
  }));
}
