import { appendFile, mkdir, open, readFile } from "node:fs/promises";
import { dirname } from "node:path";
import { systemCode } from "./system-error.js";

/** The lines of a file that is only ever added to; none where it is not there yet. */
export async function readLedger(path: string): Promise<string[]> {
  try {
    return (await readFile(path, "utf8")).split("\n").filter((line) => line.trim() !== "");
  } catch (error) {
    if (systemCode(error) === "ENOENT") return [];
    throw error;
  }
}

/**
 * Adds a line and returns when the disk has it, so that it is there after the process, or the machine, has gone. A line that
 * was torn by a kill is ended first, so that it tears no other.
 */
export async function addToLedger(path: string, value: object): Promise<void> {
  await mkdir(dirname(path), { recursive: true, mode: 0o700 });
  const lead = (await endsWhole(path)) ? "" : "\n";
  await appendFile(path, `${lead}${JSON.stringify(value)}\n`, { mode: 0o600, flush: true });
}

async function endsWhole(path: string): Promise<boolean> {
  const handle = await open(path).catch(() => null);
  if (!handle) return true;
  try {
    const { size } = await handle.stat();
    if (size === 0) return true;
    const { buffer } = await handle.read(Buffer.alloc(1), 0, 1, size - 1);
    return buffer.toString() === "\n";
  } finally {
    await handle.close();
  }
}
