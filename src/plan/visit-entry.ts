import { z } from "zod";
import type { Outcome } from "#problems/problem.js";
import { checkShape } from "./check-shape.js";
import { price } from "./scalars/number.js";
import { told, words } from "./scalars/text.js";
import { day, localTime } from "./scalars/time.js";
import { type Source, textOf } from "./text-of.js";
import { visitDone } from "./visit-schema.js";
import { readYaml } from "./yaml.js";

/** What is entered after a visit: the visit itself, and what changes in the plan because of it. */
export const visitEntry = z.strictObject({
  ...visitDone.shape,
  reason: told.optional().describe("What the paper says from now on was found and done, in place of the plan's reason"),
  every: words.optional().describe("With decided: stretch, the new gap: 2-3 days"),
  course: z
    .array(words)
    .max(20)
    .optional()
    .describe("The course from today on, instead of what follows from the decision"),
  booked: z.array(localTime).max(60).default([]).describe("Visits agreed now"),
  left: z.record(words, words).default({}).describe("How much of a medicine is in the house: carprofen: 3 tablets"),
  stop: z.array(words).max(20).default([]).describe("Medicines to stop today"),
  medicines: z
    .array(z.looseObject({ name: words }))
    .max(20)
    .default([])
    .describe("Medicines that begin today, or change: with an old name, only what is new"),
  charged: price.optional().describe("What the visit came to, taxes in; without it, that is not yet known"),
  "charged on": z.record(day, price).default({}).describe("What a day before came to, taxes in: 2026-03-02: 401.06"),
  "collar until": z.union([z.literal("off"), day, words]).optional(),
});

export type VisitEntry = z.output<typeof visitEntry>;

/** Reads what was entered: a file (YAML or JSON), and fields that go before the file's own. */
export function mergeVisit(source: Source | null, fields: Record<string, unknown>): Outcome<VisitEntry> {
  const start = { file: source?.file ?? "visit", line: 1, column: 1, length: 1 };
  if (!source) return checkShape(visitEntry, fields, { "": start });
  const text = textOf(source);
  if (text.value === null) return { value: null, problems: text.problems };
  const { data, places, problems } = readYaml(source.file, text.value);
  if (data === undefined || problems.length > 0) return { value: null, problems };
  const written = typeof data === "object" && data !== null ? data : {};
  return checkShape(visitEntry, { ...written, ...fields }, places);
}
