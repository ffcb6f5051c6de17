import { spawnSync } from "node:child_process";
import { cpSync, mkdtempSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

const home = fileURLToPath(new URL("../../", import.meta.url));

/** Where the command line lies once it is built, and as it was compiled before it was bundled. */
export const main = join(home, "dist/bin/hearthsheet.js");
export const compiled = join(home, "dist/cli/main.js");

export type Run = { code: number | null; out: string; err: string };
/** main: another copy of the command line. */
type Setting = { cwd: string; main?: string; input?: string | Uint8Array; env?: Record<string, string>; uid?: number };

/** One command line, in a folder of its own, far from this terminal. */
export function hearthsheet(
  args: readonly string[],
  { cwd, input = "", env = {}, uid, main: own = main }: Setting,
): Run {
  const { status, stdout, stderr } = spawnSync(process.execPath, [own, ...args], {
    cwd,
    input,
    encoding: "utf8",
    env: { PATH: process.env["PATH"], TZ: "America/Chicago", ...env },
    ...(uid === undefined ? {} : { uid, gid: uid }),
  });
  return { code: status, out: stdout, err: stderr };
}

/** A copy of the examples in a new folder: examples/clinic.yaml, examples/dog-cheek-abscess/plan.yaml, ... */
export function copyOfExamples(): string {
  const folder = mkdtempSync(join(tmpdir(), "hearthsheet-"));
  cpSync(join(home, "examples"), folder, { recursive: true });
  return folder;
}

/** What a stack trace looks like: it must never reach a user. */
export const stackTrace = /\n\s+at .+:\d+|node:internal|Error:/;
