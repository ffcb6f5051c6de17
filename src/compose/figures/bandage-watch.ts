import type { Species } from "#compute/facts.js";
import type { Figure } from "#handout/handout.js";
import { type Page, plainOn } from "../page.js";
import { type Drawn, drop, legWrap, tieOver } from "./drawings/bandages.js";
import { movedPath, placed, type Spot } from "./drawings/stroke.js";
import { bodyWrap, headWrap, splint } from "./drawings/wraps.js";
import { under } from "./shapes.js";

const panel = 125;
const spotOf = (i: number): Spot => ({ x: i * panel + panel / 2, y: 48 });

/** How each kind of bandage looks, and what a topic puts on without one. */
const drawings: Record<string, (species: Species) => Drawn> = {
  "tie-over": () => tieOver,
  "limb-wrap": () => legWrap,
  "head-wrap": headWrap,
  "body-wrap": bodyWrap,
  "splint-or-cast": () => splint,
};

/** A bandage that is well, one that is wet and one that has slipped. Null where there is none we can draw. */
export function bandageWatchOn(page: Page): Figure | null {
  const { care, patient } = page.view;
  const drawn = care.flatMap(({ bandage, topic }) => drawings[bandage ?? topic]?.(patient.species) ?? [])[0];
  if (!drawn) return null;
  const words = (key: string) => plainOn(page, `drawings:bandage.${key}`);
  const [well, wet, slipped] = [spotOf(0), spotOf(1), spotOf(2)];
  return {
    kind: "figure",
    id: "bandage-watch",
    width: 3 * panel,
    height: 116,
    shapes: [
      ...[well, wet].flatMap((spot) => placed([...drawn.holds, ...drawn.bandage], spot)),
      ...drawn.drops.flatMap(([x, y]) => placed([drop], { x: wet.x + x, y: wet.y + y })),
      ...placed(drawn.holds, slipped),
      { path: movedPath(drawn.bandage[0].path, slipped), fill: "none", stroke: "ink", width: 1, dashed: true },
      ...placed(drawn.bandage, { ...slipped, ...drawn.slips(slipped) }),
    ],
    labels: under([words("well"), words("wet"), words("slipped")], panel, 110),
    alt: words("alt"),
    caption: [],
  };
}
