import type { Shape } from "#handout/handout.js";

/** A line of a drawing: absolute M, L, C and Z alone, so that it can be moved. */
export type Stroke = { path: string; width: number; fill?: "pale" | "ink" };

/** Where a drawing goes: scaled about 0, 0, mirrored in the upright line mirror / 2 if that is given, then moved. */
export type Spot = { x: number; y: number; scale?: number; mirror?: number; turn?: number };

/** Strokes as shapes of a figure, at a spot; turn: degrees clockwise about 0, 0. */
export const placed = (strokes: readonly Stroke[], spot: Spot): Shape[] =>
  strokes.map(
    ({ path, width, fill }): Shape => ({ path: movedPath(path, spot), fill: fill ?? "none", stroke: "ink", width }),
  );

export function movedPath(path: string, spot: Spot): string {
  return path.replace(/(-?\d+(?:\.\d+)?) (-?\d+(?:\.\d+)?)/g, (_, x: string, y: string) => {
    const point = movedPoint({ x: Number(x), y: Number(y) }, spot);
    return `${round(point.x)} ${round(point.y)}`;
  });
}

export function movedPoint(point: { x: number; y: number }, { x, y, scale = 1, mirror, turn = 0 }: Spot) {
  const across = mirror === undefined ? point.x : mirror - point.x;
  const angle = (turn * Math.PI) / 180;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return { x: x + scale * (across * cos - point.y * sin), y: y + scale * (across * sin + point.y * cos) };
}

const round = (value: number) => Math.round(value * 10) / 10 || 0;
