import type { Collar, Species } from "#compute/facts.js";
import type { Figure, Label, Shape } from "#handout/handout.js";
import { amountOn, type Page, plainOn } from "../page.js";
import { circle, span } from "./shapes.js";

const line = (path: string, width = 2): Shape => ({ path, fill: "none", stroke: "ink", width });

/** Heads from the side, looking right, the neck at the left; nose: the middle of its tip. */
const heads: Record<Species, { outline: string; ear: string; eye: string; nose: { x: number; y: number } }> = {
  dog: {
    outline:
      "M64 128C84 112 108 98 140 96C166 92 186 98 196 110L246 122C260 126 262 140 250 146L212 156C196 166 160 172 130 168C108 172 84 182 64 192",
    ear: "M140 98C128 108 120 136 128 152C140 154 152 140 156 122C158 112 152 100 140 98Z",
    eye: circle(188, 119, 4),
    nose: { x: 252, y: 130 },
  },
  cat: {
    outline:
      "M64 134C84 122 112 108 138 100C168 92 200 100 214 118L240 132C250 138 248 150 236 154C224 168 196 178 160 172C120 170 90 178 64 190",
    ear: "M146 102L142 78L180 98Z",
    eye: circle(206, 124, 5),
    nose: { x: 242, y: 138 },
  },
};

/** The cone seen from the side: shut at the neck, open past the nose, its rim an ellipse seen edge on. */
const rim = 302;
const cone: Shape[] = [
  { path: "M96 92L296 34C308 60 308 206 296 232L96 194C88 164 88 122 96 92Z", fill: "pale" },
  line("M96 92L296 34M96 194L296 232", 2.5),
  line("M296 34C308 60 308 206 296 232C284 206 284 60 296 34Z", 2.5),
  line("M96 92C88 122 88 164 96 194", 4),
];

/** How a cone must sit: its rim past the nose, room for fingers at the neck. Null for a collar that need not pass the nose. */
export function collarFitOn(page: Page, collar: Collar): Figure | null {
  if (!collar.kind.includes("cone") || !collar.pastNose) return null;
  const head = heads[page.view.patient.species];
  const tip = head.nose.x + 6;
  const past = amountOn(page, collar.pastNose);
  const label = (text: string, x: number, y: number, align: Label["align"]): Label => ({ text, x, y, size: 15, align });
  return {
    kind: "figure",
    id: "collar-fit",
    width: 500,
    height: 272,
    shapes: [
      ...cone,
      { path: head.outline, fill: "none", stroke: "ink", width: 2.5 },
      { path: head.ear, fill: "pale", stroke: "ink", width: 2 },
      { path: head.eye, fill: "ink" },
      { path: circle(head.nose.x, head.nose.y, 6), fill: "ink" },
      { ...line(`M${tip} ${head.nose.y}V258`, 1.5), dashed: true },
      { ...line(`M${rim} ${head.nose.y}V258`, 1.5), dashed: true },
      { path: span(tip, rim, 252), fill: "none", stroke: "accent", width: 2 },
      line("M92 200L70 238", 1.5),
    ],
    labels: [
      label(plainOn(page, "drawings:collar.past", { amount: past }), 312, 257, "start"),
      label(plainOn(page, "drawings:collar.rim"), 318, 100, "start"),
      label(plainOn(page, "drawings:collar.neck"), 8, 256, "start"),
    ],
    alt: plainOn(page, "drawings:collar.alt", { amount: past }),
    caption: [{ kind: "text", text: plainOn(page, "drawings:collar.caption") }],
  };
}
