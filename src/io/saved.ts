import { type Stats, unwatchFile, watchFile } from "node:fs";

/** How often files are looked at, in milliseconds: by their times, so that it works however an editor saves. */
const often = 250;

/** Waits until one of the files has been saved, made or taken away. */
export const saved = (paths: readonly string[]): Promise<void> =>
  new Promise((done) => {
    const seen = (now: Stats, before: Stats) => {
      // What is not there is told once as it is.
      if (now.mtimeMs === before.mtimeMs && now.ino === before.ino) return;
      for (const path of paths) unwatchFile(path, seen);
      done();
    };
    for (const path of paths) watchFile(path, { interval: often }, seen);
  });
