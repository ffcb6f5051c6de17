import type { DayMark } from "#handout/handout.js";
import { lineMarks } from "./line-pieces.js";
import { linesOf } from "./lines.js";
import type { Mark, Piece } from "./piece.js";
import type { Setting } from "./setting.js";
import type { Colour, Style } from "./sheet.js";
import { lookOf, spansOf } from "./spans.js";
import { lower } from "./stack.js";
import { type Tag, tag } from "./tag.js";

type Drawn = {
  path: string;
  fill: Colour | null;
  stroke: { colour: Colour; width: number; dash: number | null } | null;
};

const disc = "M1 6a5 5 0 1 0 10 0a5 5 0 1 0 -10 0z";

/**
 * A shape for each kind of day, in a box of 12 units: told apart by form, not by colour. A house for going home, a full disc
 * for what is agreed, a ring for what is expected, a broken ring for what may be, a bar for a closed door.
 */
const shapes: Record<DayMark["mark"], Drawn> = {
  discharge: { path: "M6 0.8L11.6 6H10V11.2H2V6H0.4z", fill: "ink", stroke: null },
  booked: { path: disc, fill: "ink", stroke: null },
  expected: { path: disc, fill: null, stroke: { colour: "ink", width: 1.5, dash: null } },
  possible: { path: disc, fill: null, stroke: { colour: "ink", width: 1.2, dash: 1.9 } },
  closed: { path: "M2 6H10", fill: null, stroke: { colour: "ink", width: 1.2, dash: null } },
};

export const shapeMark = (mark: DayMark["mark"], x: number, y: number, size: number, owner: Tag | null): Mark => ({
  kind: "path",
  x,
  y,
  scale: size / 12,
  ...shapes[mark],
  box: { x, y, width: size, height: size },
  clip: false,
  tag: owner,
});

/** The words of the shapes, in two columns. The shapes beside them are decoration for a reader who hears the words. */
export function legendPieces(legend: DayMark[], parent: Tag, setting: Setting): Piece[] {
  const { text, styles, large, step } = setting.sheet;
  const style: Style = { ...styles.small, colour: "ink" };
  const list = tag("L", parent, { numbering: "None" });
  const size = large ? 16 : 11;
  const across = large ? 1 : 2;
  const width = (text.width - step * (across - 1)) / across;
  const hang = size + step;
  const entries = legend.map(({ mark, text: words }, index) => {
    const x = text.x + (index % across) * (width + step);
    const owner = tag("LBody", tag("LI", list));
    const spans = spansOf([{ kind: "text", text: words }], lookOf(style), owner, setting);
    let height = 0;
    const marks = linesOf(spans, width - hang, setting).flatMap((line) => {
      const drawn = lower(lineMarks(line, x + hang, 0), height);
      height += line.height;
      return drawn;
    });
    return { height, marks: [shapeMark(mark, x, (style.leading - size) / 2, size, null), ...marks] };
  });
  return Array.from({ length: Math.ceil(entries.length / across) }, (_, row): Piece => {
    const inRow = entries.slice(row * across, (row + 1) * across);
    const height = Math.max(...inRow.map((entry) => entry.height));
    return { what: "line", ...text, height, before: 0, keep: false, marks: inRow.flatMap(({ marks }) => marks) };
  });
}
