import type { Care, Facts } from "#compute/facts.js";
import type { Figure, Shape } from "#handout/handout.js";
import { type Page, plainOn } from "../page.js";
import { bodies } from "./drawings/bodies.js";
import { movedPoint, placed, type Spot } from "./drawings/stroke.js";
import { circle, upright } from "./shapes.js";
import { marks } from "./site-marks.js";

const scale = 0.74;
const view = { width: 240 * scale, height: 154 * scale };
const ring = 8;
const line = 2.6;

type Marked = Care & { site: string };

/** The animal from the side that matters with a ring where it is sore; both sides where both are. Null where no place is known. */
export function woundPlaceOn(page: Page): Figure | null {
  const { care, patient } = page.view;
  const marked = care.filter((one): one is Marked => markOf(one, patient.species) !== null);
  const right = marked.filter(({ side }) => side === "right");
  const left = marked.filter(({ side }) => side !== "right");
  const sides = [left, right].filter((side) => side.length > 0);
  if (sides.length === 0) return null;
  const shapes = sides.flatMap((side, i): Shape[] => {
    const spot = { x: i * (view.width + 20), y: 0, scale, ...(side === right ? { mirror: 240 } : {}) };
    // Turned over, a wound of the left side would be seen on the right.
    return upright(
      [...placed(bodies[patient.species], spot), ...rings(side, spot, page.view)],
      spot.x + view.width / 2,
    );
  });
  const name = ({ site, side }: Marked) => plainOn(page, `sites:${site}`, side ? { context: side } : {});
  const where = page.voice.list([...new Set(marked.map(name))]);
  return {
    kind: "figure",
    id: "wound-place",
    width: sides.length * view.width + (sides.length - 1) * 20,
    height: view.height,
    shapes,
    labels: [],
    alt: plainOn(page, `drawings:place.alt.${patient.species}`, { where }),
    caption: [{ kind: "text", text: plainOn(page, "drawings:place.caption", { where }) }],
  };
}

const markOf = ({ site }: Care, species: Facts["patient"]["species"]) => (site && marks[site]?.[species]) || null;

function rings(side: Marked[], spot: Spot, { patient }: Facts): Shape[] {
  const at = side.flatMap((one) => markOf(one, patient.species) ?? []);
  const points = at.map(([x, y]) => movedPoint({ x, y }, spot));
  // A ring round a paw stays in its drawing.
  const lowest = Math.floor(view.height - ring - line / 2);
  const paths = [...new Set(points.map(({ x, y }) => circle(Math.round(x), Math.min(Math.round(y), lowest), ring)))];
  return paths.map((path) => ({ path, fill: "none", stroke: "ink", width: line }));
}
