import type { z } from "zod";
import { type Outcome, problem } from "#problems/problem.js";

/**
 * Reads one table of shared/: JSON text into what the schema says, or every fault of it, each told with its path.
 * Problems: "table-not-json", "table-row-wrong".
 */
export function readTable<T extends z.ZodType>(schema: T, text: string, file: string): Outcome<z.output<T>> {
  const at = { file, line: 1, column: 1, length: 1 };
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch (error) {
    return { value: null, problems: [problem("table-not-json", at, { detail: String(error) })] };
  }
  const read = schema.safeParse(json);
  if (read.success) return { value: read.data, problems: [] };
  return {
    value: null,
    problems: read.error.issues.map(({ path, message }) =>
      problem("table-row-wrong", at, { detail: `${path.join("/")}: ${message}` }),
    ),
  };
}
