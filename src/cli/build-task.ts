import { createHash } from "node:crypto";
import { join } from "node:path";
import type { Outcome, Source } from "#index.js";
import { isThere } from "#io/find-above.js";
import { readSource } from "#io/read-source.js";
import { version } from "#io/shipped.js";
import { buildOne } from "./build-one.js";
import { type Case, readCase } from "./case.js";
import type { Desk } from "./desk.js";
import type { ExitCode } from "./exit-code.js";
import type { BuildOptions } from "./options.js";

/**
 * One plan to build; plain data, so that it can go to another thread. from: the folder it was written in; folder: where its
 * package goes; kept: the case folder it is kept in, if it is; before: what an earlier run built it from; source: a line of a stream, or null for the file of its name.
 */
export type Task = {
  name: string;
  from: string;
  folder: string;
  kept: string | null;
  line: number;
  source: Outcome<Source> | null;
  before: string | null;
  options: BuildOptions;
};

/** What came of a plan: what is said of it, and a hash of all it was built from. skipped: an earlier run had built it. */
export type Built = {
  name: string;
  code: ExitCode;
  language: string;
  from: string;
  skipped: boolean;
  said: { to: "out" | "err"; line: string }[];
};
export type Builder = (task: Task) => Promise<Built>;

/** Builds at a desk, and keeps what is said for whoever prints it. */
export const builder =
  (desk: Pick<Desk, "house" | "json" | "terminal">): Builder =>
  async ({ name, from: written, folder, kept, line, source, before, options }) => {
    const said: Built["said"] = [];
    const quiet = {
      out: (line: string) => said.push({ to: "out", line }),
      err: (line: string) => said.push({ to: "err", line }),
    };
    const read = await readCase(desk.house, name, source ?? (await readSource(name)), written, line, options.today);
    const from = hashOf(read, options, await version());
    const made = { name, language: read.language, from, said };
    if (from === before && (await isThere(join(folder, "record.json")))) return { ...made, code: 0, skipped: true };
    const code = await buildOne(
      { ...desk, house: read.house, terminal: { ...desk.terminal, ...quiet } } as Desk,
      read,
      { out: folder, kept },
      options,
    );
    return { ...made, code, skipped: false };
  };

/** Everything a package follows from: the texts, what was asked for, and the tool. */
function hashOf({ texts, earlier, house, reviews }: Case, options: BuildOptions, tool: string): string {
  const hash = createHash("sha256");
  for (const { bytes } of texts) hash.update(`${bytes.length} `).update(bytes);
  const { jobs: _jobs, resume: _resume, json: _json, ...asked } = options;
  return hash.update(JSON.stringify([tool, asked, earlier, reviews, house.overrides])).digest("hex");
}
