import { z } from "zod";
import type { Outcome } from "#problems/problem.js";
import { readTable } from "./json.js";
import { slug, source } from "./row.js";

const decimal = z.string().regex(/^-?\d+(\.\d+)?$/);

/** base + perWord x words a sentence + perSyllable x syllables a word; limit and aim are scores. */
const measure = z.strictObject({
  id: slug,
  base: decimal,
  perWord: decimal,
  perSyllable: decimal,
  easier: z.enum(["lower", "higher"]),
  limit: decimal,
  aim: decimal,
  source,
});

const words = z.array(z.string().min(1));

/**
 * The passive of a language: an auxiliary, then perhaps a word that may stand between, then a participle, known by its
 * ending or by itself. states: words that look like one and only describe.
 */
const passive = z.strictObject({
  auxiliaries: words,
  between: words,
  endings: words,
  participles: words,
  states: words,
  source,
});

const rule = z.strictObject({
  language: z.string(),
  measures: z.array(measure).min(1),
  sentence: z.strictObject({ most: z.int().min(1), source }),
  /** Without it no passive is looked for: the language's own is not described yet. */
  passive: passive.optional(),
});

export type Measure = z.output<typeof measure>;
export type Passive = z.output<typeof passive>;
/** How easily a language is read: its published formulas, and what makes a sentence hard. */
export type ReadingRule = z.output<typeof rule>;

/** Reads shared/reading.json. Problems: "table-not-json", "table-row-wrong". */
export const readReading = (text: string, file: string): Outcome<ReadingRule[]> => readTable(z.array(rule), text, file);
