import { mkdir, readFile, writeFile } from "node:fs/promises";
import { homedir } from "node:os";
import { dirname, join } from "node:path";

/** What is kept between runs, one for all cases: in XDG_STATE_HOME, or ~/.local/state. */
const statePath = (name: string): string =>
  join(process.env["XDG_STATE_HOME"] || join(homedir(), ".local", "state"), "hearthsheet", name);

/** Where the list of what was sent is kept. */
export const ledgerPath = (): string => statePath("sent.jsonl");

export const privateFolder = (path: string) => mkdir(path, { recursive: true, mode: 0o700 });

/** What an earlier run kept for convenience; "" where there is nothing, or it cannot be read. */
export const readKept = (name: string): Promise<string> => readFile(statePath(name), "utf8").catch(() => "");

/** Keeps something for the next run. It is a convenience: where it cannot be kept, nothing is lost. */
export async function keep(name: string, text: string): Promise<void> {
  try {
    await privateFolder(dirname(statePath(name)));
    await writeFile(statePath(name), text, { mode: 0o600 });
  } catch {
    // Offered again or not, the plan is whole.
  }
}
