import type { Figure, Label } from "#handout/handout.js";
import { amountOn, type Page, plainOn } from "../page.js";
import { bodies } from "./drawings/bodies.js";
import { bowl, cloth, wrist } from "./drawings/compress.js";
import { movedPoint, placed } from "./drawings/stroke.js";
import { under, upright } from "./shapes.js";
import { marks } from "./site-marks.js";

const panel = 125;
const middle = panel / 2;

/** A warm compress in three pictures: wet the cloth, try it on the wrist, hold it on the place. Null where none is asked for. */
export function warmCompressOn(page: Page): Figure | null {
  const { steps, care, patient } = page.view;
  const step = steps.find(({ id }) => id === "steps.warm-compress");
  const { minutes } = step?.values ?? {};
  if (!minutes) return null;
  const words = (key: string, values = {}) => plainOn(page, `drawings:compress.${key}`, values);
  const held = words("hold", { minutes: typeof minutes === "string" ? minutes : amountOn(page, minutes) });

  const sore = care.find(({ topic }) => step?.topics.includes(topic));
  const spot = { x: 2 * panel + 12, y: 14, scale: 0.45, ...(sore?.side === "right" ? { mirror: 240 } : {}) };
  const [x, y] = (sore?.site && marks[sore.site]?.[patient.species][0]) || [140, 70];
  return {
    kind: "figure",
    id: "warm-compress",
    width: 3 * panel,
    height: 114,
    shapes: [
      ...placed(bowl, { x: 5, y: 4 }),
      ...placed(wrist, { x: panel + 5, y: 10 }),
      ...upright(
        [...placed(bodies[patient.species], spot), ...placed(cloth, { ...movedPoint({ x, y }, spot), scale: 0.8 })],
        2 * panel + middle,
      ),
    ],
    labels: under([words("wet"), words("test"), held], panel, 108).flatMap((label, i): Label[] => [
      label,
      { text: page.voice.number(i + 1), x: i * panel + 12, y: 20, size: 14, align: "center" },
    ]),
    alt: words("alt", { held }),
    caption: [],
  };
}
