import { h, s } from "hastscript";
import type { Drawing, Figure, Label, Shape } from "#handout/handout.js";
import { inlines } from "./inline.js";
import type { Element } from "./nodes.js";

/** Which way the page runs. */
export type Direction = "ltr" | "rtl";

/**
 * A drawing, described for a reader who cannot see it. Colours come from the style sheet, so that it follows dark mode; it also
 * shows, of the two that a drawing may have, the one for the width of the screen.
 */
export const figure = ({ narrow, ...figure }: Figure, direction: Direction): Element => {
  const { id, caption } = figure;
  return h(
    "figure",
    {},
    svg(figure, [id], figure, direction),
    narrow ? svg(narrow, [id, "narrow"], figure, direction) : null,
    caption.length > 0 ? h("figcaption", {}, inlines(caption)) : null,
  );
};

function svg(drawing: Drawing, names: string[], { alt }: Figure, direction: Direction): Element {
  const { width, height, shapes, labels } = drawing;
  const described = ["figure", ...names].join("-");
  return s(
    "svg",
    { className: names, viewBox: `0 0 ${width} ${height}`, width, height, role: "img", ariaLabelledBy: described },
    s("desc", { id: described }, alt),
    shapes.map((one) => shape(one, direction === "rtl" ? width : null)),
    labels.map((one) => label(one, direction === "rtl" ? width : null)),
  );
}

/** across: the width of a drawing that is turned over. */
const shape = ({ path, fill, stroke, width = 1, dashed, upright }: Shape, across: number | null): Element =>
  s("path", {
    d: path,
    transform: across === null ? null : turned(across, upright),
    className: [`fill-${fill}`, ...(stroke ? [`stroke-${stroke}`] : [])],
    strokeWidth: stroke ? width : null,
    strokeDashArray: dashed ? `${width * 3} ${width * 2}` : null,
  });

const anchors = { start: "start", center: "middle", end: "end" };

const turned = (across: number, upright: number | undefined): string =>
  upright === undefined ? `translate(${across} 0) scale(-1 1)` : `translate(${across - 2 * upright} 0)`;

const label = ({ text, x, y, size, align }: Label, across: number | null): Element =>
  s("text", { x: across === null ? x : across - x, y, fontSize: size, textAnchor: anchors[align] }, text);
