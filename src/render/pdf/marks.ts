import type { Mark } from "./piece.js";
import type { Colour, Style } from "./sheet.js";
import type { Tag } from "./tag.js";

const round = (value: number): string => String(Math.round(value * 1000) / 1000);

/** A hairline or a heavier rule: decoration. */
export const rule = (x: number, y: number, width: number, thickness: number, colour: Colour): Mark => ({
  kind: "rule",
  x,
  y,
  width,
  thickness,
  colour,
  tag: null,
});

/** A box to tick with a pen, drawn because fonts seldom have one. It is centred on the capitals of its line. */
export function tickBox(x: number, baseline: number, size: number, style: Style, tag: Tag): Mark {
  const y = baseline - style.size * 0.335 - size / 2;
  const line = 1.1;
  const inner = round(size - line);
  const start = round(line / 2);
  return {
    kind: "path",
    x,
    y,
    scale: 1,
    path: `M${start} ${start}h${inner}v${inner}h-${inner}z`,
    fill: null,
    stroke: { colour: "ink", width: line, dash: null },
    box: { x, y, width: size, height: size },
    clip: false,
    tag,
  };
}
