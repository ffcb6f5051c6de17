import { z } from "zod";
import type { Outcome } from "#problems/problem.js";
import { readTable } from "./json.js";
import { source } from "./row.js";

/** The total of a bill that is paid in cash goes to the nearest step, in minor units; less than from stays as it is. */
const row = z.strictObject({
  country: z.string().regex(/^[A-Z]{2}$/),
  currency: z.string().regex(/^[A-Z]{3}$/),
  /** No source read names another; of a step of five, no amount is in the middle. */
  step: z.literal(5),
  from: z.int().min(0),
  source,
});

/** A country whose smallest coin is worth more than its smallest unit of money. */
export type CashRounding = z.output<typeof row>;

/** Reads shared/cash.json. Problems: "table-not-json", "table-row-wrong". */
export const readCash = (text: string, file: string): Outcome<CashRounding[]> => readTable(z.array(row), text, file);
