import type { Shape } from "#handout/handout.js";

/** SVG paths of the small shapes the figures are made of; x, y is the middle. */

export const circle = (x: number, y: number, r: number): string =>
  `M${x - r} ${y}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0Z`;

export const cross = (x: number, y: number, r: number): string =>
  `M${x - r} ${y - r}L${x + r} ${y + r}M${x + r} ${y - r}L${x - r} ${y + r}`;

export const tick = (x: number, y: number, r: number): string =>
  `M${x - r} ${y}L${x - r / 4} ${y + r * 0.8}L${x + r} ${y - r}`;

/** A house: going home. */
export const house = (x: number, y: number, r: number): string =>
  `M${x - r} ${y - 1}L${x} ${y - r}L${x + r} ${y - 1}H${x + r - 3}V${y + r - 2}H${x - r + 3}V${y - 1}Z`;

/** Shapes that a page from right to left moves, with the line of x, and does not turn over. */
export const upright = (shapes: readonly Shape[], x: number): Shape[] =>
  shapes.map((shape) => ({ ...shape, upright: x }));

/** A level double arrow from x1 to x2. */
export const span = (x1: number, x2: number, y: number): string =>
  `M${x1} ${y}H${x2}M${x1 + 6} ${y - 4}L${x1} ${y}L${x1 + 6} ${y + 4}M${x2 - 6} ${y - 4}L${x2} ${y}L${x2 - 6} ${y + 4}`;

/** A box from its left upper to its right lower corner. */
export const box = (x1: number, y1: number, x2: number, y2: number): string => `M${x1} ${y1}H${x2}V${y2}H${x1}Z`;
