import type { Tally } from "./tally.js";

const full = 20;

/** "#####--------------- 25/100, 1 not ready, 12 s to go"; of a stream nobody knows how long it is. */
export function progressLine(
  { ready, stopped }: Tally,
  plans: readonly string[],
  seconds: number,
  width: number,
): string {
  const done = ready + stopped;
  const failed = stopped > 0 ? `, ${stopped} not ready` : "";
  if (plans[0] === "-")
    return `${done}${failed}, ${(done / Math.max(seconds, 0.001)).toFixed(1)} a second`.slice(0, width - 1);
  const filled = Math.round((full * done) / plans.length);
  const left = Math.round((seconds / done) * (plans.length - done));
  return `${"#".repeat(filled)}${"-".repeat(full - filled)} ${done}/${plans.length}${failed}, ${left} s to go`.slice(
    0,
    width - 1,
  );
}
