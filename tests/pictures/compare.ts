import pixelmatch from "pixelmatch";
import { PNG } from "pngjs";
import type { Kind } from "./picture.js";

/**
 * threshold: how far a point may be from the accepted one before it counts (0 to 1, black to white). most: so many points of a
 * window of 12 by 12 may differ. Measured: the same page drawn by another program (mutool for pdftoppm), or with three points to
 * a pixel in place of two, differs in at most 12 points on paper and 19 on a screen; one that lost a word, in 25 or more.
 */
const tolerance: Record<Kind, { threshold: number; most: number }> = {
  grey: { threshold: 0.15, most: 18 },
  colour: { threshold: 0.1, most: 24 },
};
const windowSize = 12;

export type Comparison = { alike: boolean; points: number; difference: PNG };

/** alike: within the tolerance. points: the most that differ in any window. difference: the page with what differs in red. */
export function compare(accepted: PNG, drawn: PNG, kind: Kind): Comparison {
  const { width, height } = accepted;
  const difference = new PNG({ width, height });
  if (drawn.width !== width || drawn.height !== height)
    return { alike: false, points: width * height, difference: drawn };
  const { threshold, most } = tolerance[kind];
  const options = { threshold, includeAA: true, windowSize };
  const points = pixelmatch(accepted.data, drawn.data, difference.data, width, height, options);
  return { alike: points <= most, points, difference };
}
