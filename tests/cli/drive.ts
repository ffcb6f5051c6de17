import { spawnSync } from "node:child_process";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { main } from "./hearthsheet.js";

const driver = fileURLToPath(new URL("./terminal.py", import.meta.url));
const sequence = "\u001b\\[";

export const enter = "\r";
export const down = "\u001b[B";
export const typed = (text: string): string[] => [...text, enter];
/** What is waited for on the terminal, and the keys that are pressed then. */
export type Step = [string, string[]];
type Setting = { cwd: string; columns: number; env?: Record<string, string> };

/** One command line on a real terminal. shown: all that it showed, without the codes that move the cursor and colour words. */
export function drive(steps: readonly Step[], args: readonly string[], { cwd, columns, env = {} }: Setting) {
  const { status, stdout, stderr } = spawnSync(
    "python3",
    [driver, String(columns), JSON.stringify(steps), process.execPath, main, ...args],
    {
      cwd,
      encoding: "utf8",
      env: { PATH: process.env["PATH"], TERM: "xterm", XDG_STATE_HOME: join(cwd, "s"), ...env },
    },
  );
  return {
    code: status,
    colours: stdout.match(new RegExp(`${sequence}3\\d`, "g")) ?? [],
    shown: stdout.replace(new RegExp(`${sequence}[0-9;?]*[A-Za-z]`, "g"), ""),
    stderr,
  };
}
