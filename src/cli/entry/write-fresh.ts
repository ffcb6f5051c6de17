import { mkdir } from "node:fs/promises";
import { dirname } from "node:path";
import { systemCode } from "#io/system-error.js";
import { writeNew } from "#io/write-new.js";
import { type Problem, problem } from "#problems/problem.js";

/** Writes a file that is not there yet, and the folder it goes into; why not, where it cannot. */
export async function writeFresh(path: string, text: string): Promise<Problem | null> {
  const at = { file: path, line: 1, column: 1, length: 1 };
  try {
    await mkdir(dirname(path), { recursive: true });
    return (await writeNew(path, text)) ? null : problem("new-exists", at, { path });
  } catch (error) {
    const detail = systemCode(error);
    if (detail === null) throw error;
    return problem("new-unwritable", at, { path, detail });
  }
}
