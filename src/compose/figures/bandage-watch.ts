import type { Species } from "#compute/facts.js";
import type { Figure, Shape } from "#handout/handout.js";
import { type Page, plainOn } from "../page.js";
import { type Drawn, drop, legWrap, tieOver } from "./drawings/bandages.js";
import { movedPath, placed } from "./drawings/stroke.js";
import { bodyWrap, headWrap, splint } from "./drawings/wraps.js";
import { panels, panelWidth } from "./panels.js";

const middle = { x: panelWidth / 2, y: 48 };
const spotIn = (x: number, y: number) => ({ x: x + middle.x, y: y + middle.y });

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
  const well = (x: number, y: number): Shape[] => placed([...drawn.holds, ...drawn.bandage], spotIn(x, y));
  const drops = (x: number, y: number): Shape[] =>
    drawn.drops.flatMap(([right, down]) => placed([drop], spotIn(x + right, y + down)));
  const slipped = (x: number, y: number): Shape[] => {
    const spot = spotIn(x, y);
    return [
      ...placed(drawn.holds, spot),
      { path: movedPath(drawn.bandage[0].path, spot), fill: "none", stroke: "ink", width: 1, dashed: true },
      ...placed(drawn.bandage, { ...spot, ...drawn.slips(spot) }),
    ];
  };
  return {
    kind: "figure",
    id: "bandage-watch",
    ...panels([
      { words: words("well"), shapes: well },
      { words: words("wet"), shapes: (x, y) => [...well(x, y), ...drops(x, y)] },
      { words: words("slipped"), shapes: slipped },
    ]),
    alt: words("alt"),
    caption: [],
  };
}
