import { z } from "zod";
import { statementId } from "./conflicts.js";
import { slug, source } from "./row.js";

/** A row of the log that an owner fills in: always there, or where one of these statements is said, or with what the plan has. */
export const logRowSchema = z.strictObject({
  id: slug,
  for: z.array(statementId).min(1).optional(),
  needs: z.enum(["medicines", "collar"]).optional(),
  /** Left out where one of these is said. */
  unless: z.array(statementId).min(1).optional(),
  /** A box to tick when it went well, or room for a number. */
  write: z.enum(["tick", "number"]),
  /** Compared with the day before: not asked on the day of discharge. */
  compares: z.literal(true).optional(),
  source,
});

export type LogRow = z.output<typeof logRowSchema>;
