import type { Figure } from "#handout/handout.js";
import { amountOn, type Page, plainOn } from "../page.js";
import { clock, falls, rises, sleeper } from "./drawings/sleeper.js";
import { placed } from "./drawings/stroke.js";
import { panels } from "./panels.js";

/** How to count breaths: the chest goes up, goes down, and a clock says how long. Null where none are counted. */
export function breathsOn(page: Page): Figure | null {
  const { time } = page.view.steps.find(({ id }) => id === "steps.count-breaths")?.values ?? {};
  if (!time) return null;
  const { species } = page.view.patient;
  const words = (key: string, values = {}) => plainOn(page, `drawings:breaths.${key}`, values);
  const count = words("clock", { time: typeof time === "string" ? time : amountOn(page, time) });
  const asleep = (x: number, y: number) => ({ x: x + 8, y: y + 24 });
  return {
    kind: "figure",
    id: "breaths",
    ...panels([
      { words: words("up"), shapes: (x, y) => placed([...sleeper[species], ...rises], asleep(x, y)) },
      { words: words("down"), shapes: (x, y) => placed([...sleeper[species], ...falls], asleep(x, y)) },
      { words: count, shapes: (x, y) => placed(clock, { x: x + 27, y: y + 16 }) },
    ]),
    alt: words("alt", { clock: count }),
    caption: [],
  };
}
