import type { Figure } from "#handout/handout.js";
import { amountOn, type Page, plainOn } from "../page.js";
import { bodies } from "./drawings/bodies.js";
import { bowl, cloth, wrist } from "./drawings/compress.js";
import { movedPoint, placed } from "./drawings/stroke.js";
import { type Panel, panels, panelWidth } from "./panels.js";
import { upright } from "./shapes.js";
import { marks } from "./site-marks.js";

/** A warm compress in three pictures: wet the cloth, try it on the wrist, hold it on the place. Null where none is asked for. */
export function warmCompressOn(page: Page): Figure | null {
  const { steps, care, patient } = page.view;
  const step = steps.find(({ id }) => id === "steps.warm-compress");
  const { minutes } = step?.values ?? {};
  if (!minutes) return null;
  const words = (key: string, values = {}) => plainOn(page, `drawings:compress.${key}`, values);
  const held = words("hold", { minutes: typeof minutes === "string" ? minutes : amountOn(page, minutes) });

  const sore = care.find(({ topic }) => step?.topics.includes(topic));
  const [across, down] = (sore?.site && marks[sore.site]?.[patient.species][0]) || [140, 70];
  const onTheAnimal = (x: number, y: number) => {
    const spot = { x: x + 12, y: y + 14, scale: 0.45, ...(sore?.side === "right" ? { mirror: 240 } : {}) };
    const place = movedPoint({ x: across, y: down }, spot);
    const shapes = [...placed(bodies[patient.species], spot), ...placed(cloth, { ...place, scale: 0.8 })];
    return upright(shapes, x + panelWidth / 2);
  };
  const pictures: Panel[] = [
    { words: words("wet"), shapes: (x, y) => placed(bowl, { x: x + 5, y: y + 4 }) },
    { words: words("test"), shapes: (x, y) => placed(wrist, { x: x + 5, y: y + 10 }) },
    { words: held, shapes: onTheAnimal },
  ];
  return {
    kind: "figure",
    id: "warm-compress",
    ...panels(
      pictures.map((picture, i) => ({
        ...picture,
        labels: (x, y) => [{ text: page.voice.number(i + 1), x: x + 12, y: y + 20, size: 14, align: "center" }],
      })),
    ),
    alt: words("alt", { held }),
    caption: [],
  };
}
