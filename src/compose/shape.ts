import { viewShapes } from "./view-shape.js";

/**
 * The shape of what templates see. A word is the name of a type, or "string", "number" or "boolean"; [shape] a list;
 * {"*": shape} a record by any name; {"=": words} one of these words; any other object, its parts by name.
 */
export type Shape = string | Shape[] | { "=": string[] } | { [part: string]: Shape };

export const viewShape: Shape = "View";
const shapes: Record<string, Shape> = viewShapes;

const resolve = (shape: Shape): Exclude<Shape, string> | null => {
  if (typeof shape !== "string") return shape;
  const named = shapes[shape];
  return named === undefined ? null : resolve(named);
};

/** The parts of a value of this shape, by name. */
function partsOf(shape: Shape): Record<string, Shape> {
  const whole = resolve(shape);
  return whole === null || Array.isArray(whole) || "=" in whole ? {} : (whole as Record<string, Shape>);
}

/** The names that can follow a value of this shape. */
export const namesIn = (shape: Shape): string[] => Object.keys(partsOf(shape)).filter((name) => name !== "*");

/** The shape of one part of a value, or null where there is no such part. */
export function partOf(shape: Shape, name: string): Shape | null {
  const parts = partsOf(shape);
  if (name !== "*" && Object.hasOwn(parts, name)) return parts[name] ?? null;
  if (name === "length" && Array.isArray(resolve(shape))) return "number";
  if (name in Object.prototype) return null;
  return parts["*"] ?? (/^\d+$/.test(name) ? itemOf(shape) : null);
}

/** What a list, or a record by any name, holds; null for what cannot be looped over. */
export function itemOf(shape: Shape): Shape | null {
  const whole = resolve(shape);
  return (Array.isArray(whole) ? whole[0] : partsOf(shape)["*"]) ?? null;
}

/** The words a value can be, if it can be no others ("booked", "expected", "possible"); else null. */
export function choicesOf(shape: Shape): string[] | null {
  const whole = resolve(shape);
  return whole !== null && !Array.isArray(whole) && Array.isArray(whole["="]) ? (whole["="] as string[]) : null;
}
