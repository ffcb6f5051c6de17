import type { Figure } from "#handout/handout.js";
import { amountOn, type Page, plainOn } from "../page.js";
import { clock, falls, rises, sleeper } from "./drawings/sleeper.js";
import { placed } from "./drawings/stroke.js";
import { under } from "./shapes.js";

const panel = 125;

/** How to count breaths: the chest goes up, goes down, and a clock says how long. Null where none are counted. */
export function breathsOn(page: Page): Figure | null {
  const { time } = page.view.steps.find(({ id }) => id === "steps.count-breaths")?.values ?? {};
  if (!time) return null;
  const { species } = page.view.patient;
  const words = (key: string, values = {}) => plainOn(page, `drawings:breaths.${key}`, values);
  const count = words("clock", { time: typeof time === "string" ? time : amountOn(page, time) });
  const asleep = (i: number) => ({ x: i * panel + 8, y: 24 });
  return {
    kind: "figure",
    id: "breaths",
    width: 3 * panel,
    height: 114,
    shapes: [
      ...placed([...sleeper[species], ...rises], asleep(0)),
      ...placed([...sleeper[species], ...falls], asleep(1)),
      ...placed(clock, { x: 2 * panel + 27, y: 16 }),
    ],
    labels: under([words("up"), words("down"), count], panel, 108),
    alt: words("alt", { clock: count }),
    caption: [],
  };
}
