import { h, s } from "hastscript";
import type { Figure, Label, Shape } from "#handout/handout.js";
import { inlines } from "./inline.js";
import type { Element } from "./nodes.js";

/** A drawing, described for a reader who cannot see it. Colours come from the style sheet, so that it follows dark mode. */
export const figure = ({ id, width, height, shapes, labels, alt, caption }: Figure): Element => {
  const described = `figure-${id}`;
  return h(
    "figure",
    {},
    s(
      "svg",
      { className: id, viewBox: `0 0 ${width} ${height}`, width, height, role: "img", ariaLabelledBy: described },
      s("desc", { id: described }, alt),
      shapes.map(shape),
      labels.map(label),
    ),
    caption.length > 0 ? h("figcaption", {}, inlines(caption)) : null,
  );
};

const shape = ({ path, fill, stroke, width = 1, dashed }: Shape): Element =>
  s("path", {
    d: path,
    className: [`fill-${fill}`, ...(stroke ? [`stroke-${stroke}`] : [])],
    strokeWidth: stroke ? width : null,
    strokeDashArray: dashed ? `${width * 3} ${width * 2}` : null,
  });

const anchors = { start: "start", center: "middle", end: "end" };

const label = ({ text, x, y, size, align }: Label): Element =>
  s("text", { x, y, fontSize: size, textAnchor: anchors[align] }, text);
