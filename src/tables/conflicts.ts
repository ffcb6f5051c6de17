import { z } from "zod";
import { slug, source } from "./row.js";

/** "steps.warm-compress" */
export const statementId = z.string().regex(/^(done|steps|normal|signs|avoid|supplies|ends)\.[a-z0-9-]+$/);

/** Two statements an owner cannot both follow: at the same site, or wherever they are. */
export const conflictSchema = z.strictObject({
  id: slug,
  one: z.array(statementId).min(1),
  other: z.array(statementId).min(1),
  where: z.enum(["same site", "anywhere"]),
  source,
});

export type Conflict = z.output<typeof conflictSchema>;
