import { z } from "zod";

/** Where a row comes from: a publication, "from memory: ...", or "common practice, no source". */
export const source = z.string().min(10);

/** Name of a row: "tie-over". */
export const slug = z.string().regex(/^[a-z0-9]+(-[a-z0-9]+)*$/);

/** A decimal and its unit: {value: "10", unit: "min"}. */
export const amount = z.strictObject({ value: z.string().regex(/^\d+(\.\d+)?$/), unit: z.string().min(1) });
