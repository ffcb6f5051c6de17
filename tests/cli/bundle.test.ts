import { readdirSync, readFileSync, rmSync } from "node:fs";
import { join } from "node:path";
import { afterAll, expect, test } from "vitest";
import { compiled, copyOfExamples, hearthsheet, main } from "./hearthsheet.js";

const folder = copyOfExamples();
afterAll(() => rmSync(folder, { recursive: true }));

/** Every file of a build, by its path. */
function built(own: string, out: string, ...more: string[]): Record<string, string> {
  const plans = ["cat-abscess-at-home/plan.yaml", "dog-cheek-abscess/plan.yaml"];
  const formats = "pdf,html,text,ics,sms,eml";
  const args = ["build", ...plans, "--out", out, "--format", formats, "--today", "2026-03-02", ...more];
  expect(hearthsheet(args, { cwd: folder, main: own }).code).toBe(0);
  const files = readdirSync(join(folder, out), { recursive: true, withFileTypes: true }).filter((file) =>
    file.isFile(),
  );
  return Object.fromEntries(
    files
      .filter(({ name }) => !name.startsWith("."))
      .map(({ parentPath, name }) => join(parentPath, name))
      .map((path) => [path.slice(join(folder, out).length), readFileSync(path).toString("base64")]),
  );
}

test("the bundled command line makes the same files as the compiled one, alone and in threads", () => {
  const expected = built(compiled, "compiled");
  expect(Object.keys(expected).length).toBeGreaterThan(12);
  expect(built(main, "bundled")).toEqual(expected);
  expect(built(main, "threads", "--jobs", "2")).toEqual(expected);
});
