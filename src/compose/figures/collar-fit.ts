import type { Collar } from "#compute/facts.js";
import type { Drawing, Figure, Label, Shape } from "#handout/handout.js";
import { amountOn, type Page, plainOn } from "../page.js";
import { heads } from "./drawings/heads.js";
import { movedPath, placed } from "./drawings/stroke.js";
import { cross, span, tick, upright } from "./shapes.js";

const scale = 0.78;
/** Where the animal's head begins in each half of the drawing, and how wide the drawing is. */
const halves = { right: 46, wrong: 236 };
const width = 372;
const neckTop = 34;

/** A cone from its side: shut at the band, open at the rim, both between a top and a bottom. */
type Cone = { rim: number; top: number; bottom: number; band: number; bandTop: number; bandBottom: number };

/** How a cone must sit, beside one that is too short and too wide. Null for a collar that need not pass the nose. */
export function collarFitOn(page: Page, collar: Collar): Figure | null {
  if (!collar.pastNose) return null;
  const { nose, strokes } = heads[page.view.patient.species];
  const past = amountOn(page, collar.pastNose);
  const words = (key: string, values = {}) => plainOn(page, `drawings:collar.${key}`, values);
  const tip = nose * scale;
  const half = (left: number, cone: Cone): Shape[] => [
    ...coneShapes({ ...cone, rim: left + cone.rim, band: left + cone.band }),
    ...placed(strokes, { x: left, y: neckTop, scale }),
  ];
  const good: Cone = { rim: tip - 20, top: 6, bottom: 132, band: 98, bandTop: 62, bandBottom: 100 };
  const bad: Cone = { rim: tip + 22, top: 30, bottom: 116, band: 92, bandTop: 52, bandBottom: 112 };
  const noseTip = halves.right + tip;
  const rim = halves.right + good.rim;
  const right: Shape[] = [
    ...half(halves.right, good),
    dashed(noseTip, neckTop + 50 * scale, 142),
    dashed(rim, 132, 142),
    { path: span(rim, noseTip, 140), fill: "none", stroke: "ink", width: 1.4 },
    ...upright([mark(tick(12, 14, 7))], 12),
  ];
  const wrong = half(halves.wrong, bad);
  const told = [
    [words("past", { amount: past }), words("room", collar.fingers)],
    [words("short"), words("loose")],
  ] as const;
  return {
    kind: "figure",
    id: "collar-fit",
    width,
    height: 178,
    shapes: [...right, ...wrong, mark(cross(halves.wrong - 24, 14, 6))],
    labels: [...lines(told[0], 0, 158), ...lines(told[1], halves.wrong - 30, 158)],
    narrow: underEachOther(right, wrong, told),
    alt: words("alt", { amount: past, ...collar.fingers }),
    caption: [],
  };
}

/** On a narrow screen: how it must sit, and under it how it must not. */
function underEachOther(
  right: Shape[],
  wrong: Shape[],
  told: readonly [readonly string[], readonly string[]],
): Drawing {
  const down = 200;
  const away = { x: halves.right - halves.wrong, y: down };
  const moved = wrong.map((shape) => ({ ...shape, path: movedPath(shape.path, away) }));
  return {
    width: 240,
    height: down + 160,
    shapes: [...right, ...moved, mark(cross(12, down + 14, 6))],
    labels: [...lines(told[0], 0, 160), ...lines(told[1], 0, down + 138)],
  };
}

function coneShapes({ rim, top, bottom, band, bandTop, bandBottom }: Cone): Shape[] {
  const [upper, lower] = [top + (bottom - top) / 4, bottom - (bottom - top) / 4];
  const bow = (x: number) => `C${rim + x} ${upper} ${rim + x} ${lower} ${rim} ${bottom}`;
  const edge = `C${band + 5} ${bandTop + 12} ${band + 5} ${bandBottom - 12} ${band} ${bandBottom}`;
  return [
    { path: `M${rim} ${top}L${band} ${bandTop}${edge}L${rim} ${bottom}Z`, fill: "pale" },
    { path: `M${rim} ${top}${bow(-7)}M${rim} ${top}${bow(7)}`, fill: "none", stroke: "ink", width: 1.5 },
    {
      path: `M${rim} ${top}L${band} ${bandTop}M${rim} ${bottom}L${band} ${bandBottom}`,
      fill: "none",
      stroke: "ink",
      width: 1.5,
    },
    { path: `M${band} ${bandTop}${edge}`, fill: "none", stroke: "ink", width: 2.6 },
  ];
}

const dashed = (x: number, from: number, to: number): Shape => ({
  path: `M${x} ${from}V${to}`,
  fill: "none",
  stroke: "ink",
  width: 0.8,
  dashed: true,
});

const mark = (path: string): Shape => ({ path, fill: "none", stroke: "ink", width: 2.4 });

const lines = (texts: readonly string[], x: number, y: number): Label[] =>
  texts.map((text, i) => ({ text, x, y: y + 15 * i, size: 12, align: "start" }));
