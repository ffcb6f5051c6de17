import { z } from "zod";
import type { Outcome } from "#problems/problem.js";
import { readTable } from "./json.js";
import { slug, source } from "./row.js";

/** A hard word in every form of it, lower case, and plain words for it. */
const words = z.strictObject({ forms: z.array(z.string().min(1)).min(1), plain: z.string().min(1) });

/** One idea that trade words stand for, in each language that has such a word; words by language tag. */
const term = z.strictObject({ id: slug, words: z.record(z.string(), words), source });

export type GlossaryRow = z.output<typeof term>;

/** Reads shared/glossary.json. Problems: "table-not-json", "table-row-wrong". */
export const readGlossary = (text: string, file: string): Outcome<GlossaryRow[]> =>
  readTable(z.array(term), text, file);
