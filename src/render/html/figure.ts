import { isDeepStrictEqual } from "node:util";
import { h, s } from "hastscript";
import svgpath from "svgpath";
import type { Drawing, Figure, Label, Shape } from "#handout/handout.js";
import { inlines } from "./inline.js";
import type { Element } from "./nodes.js";

/** Which way the page runs. */
export type Direction = "ltr" | "rtl";

/**
 * A drawing, described for a reader who cannot see it. Colours come from the style sheet, so that it follows dark mode; it also
 * shows, of the two that a drawing may have, the one for the width of the screen, or on a narrow one none.
 */
export const figure = ({ narrow, ...figure }: Figure, direction: Direction): Element => {
  const { alt, id, caption } = figure;
  const described = `figure-${id}`;
  return h(
    "figure",
    { className: narrow === null ? "wide" : null },
    svg(figure, [id], described, direction, s("desc", { id: described }, alt)),
    narrow ? svg(narrow, [id, "narrow"], described, direction) : null,
    caption.length > 0 ? h("figcaption", {}, inlines(caption)) : null,
  );
};

/** described: the id of the words for it, which are read also where the drawing that has them is not shown. */
function svg(drawing: Drawing, names: string[], described: string, direction: Direction, desc?: Element): Element {
  const { width, height, shapes, labels } = drawing;
  return s(
    "svg",
    { className: names, viewBox: `0 0 ${width} ${height}`, width, height, role: "img", ariaLabelledBy: described },
    desc,
    alike(shapes).map((some) => group(some, direction === "rtl" ? width : null)),
    labels.map((one) => label(one, direction === "rtl" ? width : null)),
  );
}

/** Shapes that follow each other and look the same. */
function alike(shapes: readonly Shape[]): [Shape, ...Shape[]][] {
  const groups: [Shape, ...Shape[]][] = [];
  for (const shape of shapes) {
    const last = groups.at(-1);
    if (last && isDeepStrictEqual({ ...last[0], path: "" }, { ...shape, path: "" })) last.push(shape);
    else groups.push([shape]);
  }
  return groups;
}

/** Shapes that look the same; across: the width of a drawing that is turned over. */
function group(shapes: readonly [Shape, ...Shape[]], across: number | null): Element {
  const [{ fill, stroke, width = 1, dashed, upright }] = shapes;
  const look = {
    transform: across === null ? null : turned(across, upright),
    className: [`fill-${fill}`, ...(stroke ? [`stroke-${stroke}`] : [])],
    strokeWidth: stroke ? width : null,
    strokeDashArray: dashed ? `${width * 3} ${width * 2}` : null,
  };
  return s(
    "g",
    look,
    shapes.map(({ path }) => s("path", { d: short(path) })),
  );
}

/** The same line in fewer characters: relative, to a tenth of a unit. */
const short = (path: string): string => svgpath(path).rel().round(1).toString();

const anchors = { start: "start", center: "middle", end: "end" };

function turned(across: number, upright: number | undefined): string | null {
  if (upright === undefined) return `translate(${across} 0) scale(-1 1)`;
  return across === 2 * upright ? null : `translate(${across - 2 * upright} 0)`;
}

const label = ({ text, x, y, size, align }: Label, across: number | null): Element =>
  s("text", { x: across === null ? x : across - x, y, fontSize: size, textAnchor: anchors[align] }, text);
