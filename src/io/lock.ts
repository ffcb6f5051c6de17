import { join } from "node:path";
import { lock } from "proper-lockfile";

/** A lock left by a process that was killed is taken over after so long, in milliseconds. */
const stale = 5000;

/**
 * Holds a folder for this process alone while the work is done: two at once would mix their files. Waits a few seconds for
 * its turn. The folder must be there.
 * @throws ELOCKED where another process keeps it for longer.
 */
export async function alone<T>(folder: string, work: () => Promise<T>): Promise<T> {
  const release = await lock(folder, {
    lockfilePath: join(folder, ".hearthsheet.lock"),
    stale,
    retries: { retries: 12, factor: 1.5, minTimeout: 50, maxTimeout: 1500 },
  });
  try {
    return await work();
  } finally {
    await release();
  }
}
