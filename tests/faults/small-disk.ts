import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

/** A disk of its own with so many kilobytes. */
export type SmallDisk = { path: string; remove: () => void };

/** Null where this machine lets nobody mount one (a container, a user who is not root). */
export function smallDisk(kilobytes: number): SmallDisk | null {
  const path = mkdtempSync(join(tmpdir(), "small-"));
  try {
    execFileSync("mount", ["-t", "tmpfs", "-o", `size=${kilobytes}k`, "tmpfs", path], { stdio: "ignore" });
  } catch {
    rmSync(path, { recursive: true });
    return null;
  }
  return {
    path,
    remove: () => {
      execFileSync("umount", [path]);
      rmSync(path, { recursive: true });
    },
  };
}
