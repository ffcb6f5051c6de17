import { open, rm } from "node:fs/promises";
import { systemCode } from "./system-error.js";

/** Writes a file that is not there yet, whole or not at all; false where it is. Of two at once one gets it. */
export async function writeNew(path: string, text: string): Promise<boolean> {
  let made = false;
  try {
    const handle = await open(path, "wx", 0o600);
    made = true;
    try {
      await handle.writeFile(text);
      await handle.sync();
    } finally {
      await handle.close();
    }
    return true;
  } catch (error) {
    if (made) await rm(path, { force: true });
    if (systemCode(error) === "EEXIST") return false;
    throw error;
  }
}
