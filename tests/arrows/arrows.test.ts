import { spawnSync } from "node:child_process";
import { cpSync, mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";

// A linter that is set up wrongly says "no violations": so each kind of breach is made once, and must be refused.
let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "arrows-"));
  for (const file of ["package.json", "tsconfig.json", ".dependency-cruiser.mjs", "src"])
    cpSync(file, join(folder, file), { recursive: true });
  symlinkSync(join(process.cwd(), "node_modules"), join(folder, "node_modules"));
});
afterAll(() => rmSync(folder, { recursive: true }));

function cruise(file: string, text: string): { status: number | null; output: string } {
  const path = join(folder, file);
  mkdirSync(dirname(path), { recursive: true });
  writeFileSync(path, text);
  const run = spawnSync("npx", ["depcruise", "--config", ".dependency-cruiser.mjs", "src", file], {
    cwd: folder,
    encoding: "utf8",
  });
  rmSync(path);
  return { status: run.status, output: run.stdout };
}

describe("the arrows", () => {
  it.each([
    [
      "a renderer that reads another",
      "src/render/text/breach.ts",
      'import "#render/html/html.js";',
      "renderers-are-strangers",
    ],
    ["a stage that reads a file", "src/compute/breach.ts", 'import "node:fs";', "files-only-in-io"],
    ["words in compute", "src/compute/breach.ts", 'import "#locale/locales.js";', "compute-arrows"],
    ["YAML outside plan", "src/compose/breach.ts", 'import "yaml";', "yaml-home"],
    ["the front door reading arguments", "src/cli/breach.ts", 'import "#plan/yaml.js";', "cli-arrows"],
    ["a new room nobody planned", "src/helpers/breach.ts", 'import "#problems/place.js";', "known-folder"],
  ])("%s is refused", (_, file, text, rule) => {
    const { status, output } = cruise(file, text);
    expect(output).toContain(rule);
    expect(status).not.toBe(0);
  });
});
