import type { From } from "#handout/handout.js";
import { type Place, placeOf } from "#problems/place.js";

/** "plan.yaml:14:11" as a place; words that no node located are somewhere in the plan. */
export function placeFrom(from: From | undefined): Place {
  const parts = /^(.*):(\d+):(\d+)$/s.exec(from ?? "");
  if (!parts) return placeOf({});
  const [, file = "", line, column] = parts;
  return { file, line: Number(line), column: Number(column), length: 1 };
}
