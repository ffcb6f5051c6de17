import type { Estimate } from "#compute/facts.js";
import type { Figure, Label, Shape } from "#handout/handout.js";
import { type Page, plainOn } from "../page.js";
import { box } from "./shapes.js";

const width = 500;
const left = 12;
const right = width - 12;
const top = 58;
const bottom = 92;

/** The cost as a bar from low to high, with the likely cost and what is paid; null where there is only one cost. */
export function costBarOn(page: Page, { currency, total, paid }: Estimate): Figure | null {
  if (total.low === total.high) return null;
  const most = Math.max(total.high, paid);
  const x = (minor: number) => left + (minor / most) * (right - left);
  const words = (key: string, minor: number) =>
    plainOn(page, `handout:estimate.bar.${key}`, { amount: page.voice.money(minor, currency) });
  // Every label has a height of its own, so that none meets another however near their amounts are.
  const label = (text: string, minor: number, y: number): Label => ({ text, size: 15, y, ...placed(x(minor)) });
  const tick = (minor: number, from: number, to: number): Shape => ({
    path: `M${x(minor)} ${from}V${to}`,
    fill: "none",
    stroke: "ink",
    width: 2,
  });
  return {
    kind: "figure",
    id: "cost-bar",
    width,
    height: 136,
    shapes: [
      { path: box(left, top, right, bottom), fill: "none", stroke: "ink", width: 1 },
      { path: box(x(total.low), top, x(total.high), bottom), fill: "pale", stroke: "ink", width: 2 },
      ...(paid > 0 ? [{ path: box(left, top + 10, x(paid), bottom - 10), fill: "accent" } satisfies Shape] : []),
      tick(total.low, 44, bottom),
      tick(total.high, 24, bottom),
      { ...tick(total.likely, top, 102), dashed: true },
    ],
    labels: [
      label(words("high", total.high), total.high, 18),
      label(words("low", total.low), total.low, 40),
      label(words("likely", total.likely), total.likely, 116),
      ...(paid > 0 ? [{ text: words("paid", paid), x: left, y: 133, size: 15, align: "start" } satisfies Label] : []),
    ],
    alt: [
      words("low", total.low),
      words("likely", total.likely),
      words("high", total.high),
      ...(paid > 0 ? [words("paid", paid)] : []),
    ].join(". "),
    caption: [{ kind: "text", text: plainOn(page, "handout:estimate.bar.caption") }],
  };
}

/** Room for a label of ordinary length inside the box. */
const half = 80;
const placed = (x: number): Pick<Label, "x" | "align"> =>
  x < left + half ? { x: left, align: "start" } : { x: Math.min(x, right - half), align: "center" };
