import { rm, stat } from "node:fs/promises";
import { join } from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import { lock } from "proper-lockfile";

/** A lock left by a process that was killed is taken over after so long, in milliseconds. */
const stale = 5000;

/**
 * Holds a folder for this process alone while the work is done: two at once would mix their files. Waits a few seconds for
 * its turn. The folder must be there.
 * @throws ELOCKED where another process keeps it for longer.
 */
export async function alone<T>(folder: string, work: () => Promise<T>): Promise<T> {
  const path = join(folder, ".hearthsheet.lock");
  await removeFromTheFuture(path);
  const release = await lock(folder, {
    lockfilePath: path,
    stale,
    retries: { retries: 12, factor: 1.5, minTimeout: 50, maxTimeout: 1500 },
  });
  try {
    return await work();
  } finally {
    await release();
  }
}

/**
 * A lock of a time to come was left by a process that was killed while the machine's clock was ahead: it would not be stale for
 * years. One that is alive has put the clock's own time on it within half of the time it takes to go stale.
 */
async function removeFromTheFuture(path: string): Promise<void> {
  const timeOf = async () => (await stat(path).catch(() => null))?.mtimeMs ?? 0;
  const left = await timeOf();
  if (left <= Date.now() + stale) return;
  await pause(stale);
  if ((await timeOf()) === left) await rm(path, { recursive: true, force: true });
}
