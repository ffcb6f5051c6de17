import { spawnSync } from "node:child_process";
import {
  copyFileSync,
  cpSync,
  existsSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { main, stackTrace } from "../cli/hearthsheet.js";

/** An installation of its own, whose files can be damaged. */
let home = "";
beforeAll(() => {
  home = mkdtempSync(join(tmpdir(), "hearthsheet-damaged-"));
  for (const part of ["locales", "templates", "shared", "fonts", "examples"])
    cpSync(part, join(home, part), { recursive: true });
  cpSync(resolve(main, "../.."), join(home, "dist"), { recursive: true });
  copyFileSync("package.json", join(home, "package.json"));
  symlinkSync(resolve("node_modules"), join(home, "node_modules"));
});
afterAll(() => rmSync(home, { recursive: true }));

function build(language: string) {
  rmSync(join(home, "out"), { recursive: true, force: true });
  const plan = join(home, "examples/dog-cheek-abscess/plan.yaml");
  const args = ["build", plan, "--today", "2026-03-02", "--language", language, "--out", join(home, "out")];
  const { status, stdout, stderr } = spawnSync("node", [join(home, "dist/bin/hearthsheet.js"), ...args], {
    encoding: "utf8",
  });
  return { status, stdout, stderr };
}

describe.each([
  ["cut short", (file: string) => readFileSync(file).subarray(0, 300)],
  ["empty", () => new Uint8Array()],
  ["full of other bytes", () => new Uint8Array(400).fill(0xfe)],
  ["a list", () => "[]"],
])("a file of the tool's own that is %s", (_, damage) => {
  it.each(["locales/es/handout.json", "shared/medicines.json", "templates/handout/handout.hbs"])(
    "%s is named, and nothing is written",
    (name) => {
      const path = join(home, name);
      const sound = readFileSync(path);
      writeFileSync(path, damage(path));
      const { status, stdout, stderr } = build("en");
      writeFileSync(path, sound);
      // A template that is gone or cut short is told where others miss what it held.
      expect(stderr).toContain(name.startsWith("templates") ? "templates/handout/" : name);
      expect(stderr).toContain("Install it again");
      expect(stderr).not.toMatch(stackTrace);
      expect([status, stdout, existsSync(join(home, "out"))]).toEqual([2, "", false]);
    },
  );
});

it("a file of a language that is gone stops pages in that language, in words, and no others", () => {
  const path = join(home, "locales/es/handout.json");
  const sound = readFileSync(path);
  rmSync(path);
  const gone = build("es");
  expect(gone.stderr).toContain("[words-missing]");
  expect(gone.stderr).not.toMatch(stackTrace);
  expect([gone.status, existsSync(join(home, "out"))]).toEqual([1, false]);
  expect(build("en").status).toBe(0);
  writeFileSync(path, sound);
  expect(build("es").status).toBe(0);
});
