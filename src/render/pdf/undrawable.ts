import { placeOf } from "#problems/place.js";
import { problem } from "#problems/problem.js";
import type { Setting } from "./setting.js";

/** A node this renderer does not know is a problem, never a gap. */
export function undrawable(node: never, setting: Setting): never[] {
  setting.report(problem("node-undrawable", placeOf({}), { node: (node as { kind: string }).kind }));
  return [];
}
