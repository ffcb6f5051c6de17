import { explain, type House } from "#index.js";
import { problem } from "#problems/problem.js";
import type { Remark } from "./plan-draft.js";

const at = { file: "", line: 1, column: 1, length: 1 };

/** What is said above the fields of a new file, in a language of the staff. */
export const remarks =
  (house: House, language: string): Remark =>
  (name) =>
    explain(problem("new-comment", at, { context: name }), house, language).what;
