import { z } from "zod";
import { statementId } from "./conflicts.js";
import { slug, source } from "./row.js";

const wordsByLanguage = z.record(z.string(), z.array(z.string().min(1)).min(1));

/** Words a clinician may write, beside statements of ours an owner cannot follow with them; of some fields alone, or of all. */
const row = z.strictObject({
  id: slug,
  fields: z.array(z.string()).min(1).optional(),
  words: wordsByLanguage,
  against: z.array(statementId).min(1),
  source,
});

/** denials: words of a sentence that forbids what it names. */
export const ownWordsSchema = z.strictObject({ denials: wordsByLanguage, rows: z.array(row) });

export type OwnWords = z.output<typeof ownWordsSchema>;
