import { z } from "zod";
import type { Outcome } from "#problems/problem.js";
import { readTable } from "./json.js";
import { slug, source } from "./row.js";

const span = z
  .strictObject({ from: z.int().min(0), to: z.int().min(0) })
  .refine(({ from, to }) => from <= to, "from is after to");

/** What a visit can be for. words: what a clinician may write for it in a course line, lower case. */
const visitKind = z.strictObject({
  id: slug,
  words: z.array(z.string().regex(/^[a-z]+([ -][a-z]+)*$/)).min(1),
  /** How long it usually takes; null where it takes as long as any visit of the clinic. */
  minutes: z.int().min(1).nullable(),
  /** The bandage is off, or the wound is shut, after it: "while bandaged" ends here. */
  endsBandage: z.boolean().default(false),
  /** It is done on an open or bandaged wound, and so no more once the bandage is off for good or the wound is shut. */
  ofOpenWound: z.boolean().default(false),
  /** Days after what it waits for within which it usually falls; outside them the clinician is told. */
  usual: span.nullable().default(null),
  /** Days usually left between two of its kind. */
  usualGap: span.nullable().default(null),
  source,
});

export type VisitKind = z.output<typeof visitKind>;

const visitKinds = z.array(visitKind).superRefine((kinds, context) => {
  const names = kinds.flatMap(({ id, words }) => [...new Set([id, ...words])]);
  for (const name of names.filter((word, i) => names.indexOf(word) !== i))
    context.addIssue({ code: "custom", message: `"${name}" stands here twice` });
});

/** Reads shared/visits.json. Problems: "table-not-json", "table-row-wrong". */
export const readVisitKinds = (text: string, file: string): Outcome<VisitKind[]> => readTable(visitKinds, text, file);
