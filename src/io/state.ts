import { mkdir } from "node:fs/promises";
import { homedir } from "node:os";
import { join } from "node:path";

/** Where the list of what was sent is kept, one for all cases: in XDG_STATE_HOME, or ~/.local/state. */
export const ledgerPath = (): string =>
  join(process.env["XDG_STATE_HOME"] || join(homedir(), ".local", "state"), "hearthsheet", "sent.jsonl");

export const privateFolder = (path: string) => mkdir(path, { recursive: true, mode: 0o700 });
