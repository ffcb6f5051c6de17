import { access } from "node:fs/promises";
import { dirname, join, resolve } from "node:path";

/** The nearest file of one of these names in a folder or one above it, at most so many steps up; null where there is none. */
export async function findAbove(folder: string, names: readonly string[], steps: number): Promise<string | null> {
  const here = resolve(folder);
  for (const name of names) {
    const path = join(here, name);
    if (await isThere(path)) return path;
  }
  return steps > 0 && dirname(here) !== here ? findAbove(dirname(here), names, steps - 1) : null;
}

export const isThere = (path: string): Promise<boolean> =>
  access(path).then(
    () => true,
    () => false,
  );
