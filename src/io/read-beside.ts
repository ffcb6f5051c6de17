import { join } from "node:path";
import type { Outcome } from "#problems/problem.js";
import { readSource, type Source } from "./read-source.js";

/** A file that may lie in a folder: as readSource reads it, and no problem where it is not there. */
export async function readBeside(folder: string, name: string): Promise<Outcome<Source>> {
  const read = await readSource(join(folder, name));
  return read.problems.some(({ code }) => code === "file-not-found") ? { value: null, problems: [] } : read;
}
