import { stop } from "./kind.js";

/** A data file of shared/ that does not hold what it should. */
export const tableKinds = {
  "table-not-json": stop<{ detail: string }>(),
  "table-row-wrong": stop<{ detail: string }>(),
};
