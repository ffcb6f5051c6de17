import { z } from "zod";
import { statementId } from "./conflicts.js";
import { slug, source } from "./row.js";

/** A statement that says all that others say, and more: where it stands, they need not. */
export const strongerSchema = z.strictObject({
  id: slug,
  said: statementId,
  needless: z.array(statementId).min(1),
  source,
});

export type Stronger = z.output<typeof strongerSchema>;
