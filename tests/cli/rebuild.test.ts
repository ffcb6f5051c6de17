import { spawn } from "node:child_process";
import { createHash } from "node:crypto";
import { once } from "node:events";
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { afterEach, beforeEach, expect, it } from "vitest";
import { copyOfExamples, hearthsheet, main } from "./hearthsheet.js";

let folder = "";
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "hearthsheet-"));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const sha256 = (bytes: Uint8Array) => createHash("sha256").update(bytes).digest("hex");

it("a build with fewer formats leaves no older paper beside the new one, and tells", () => {
  const cwd = copyOfExamples();
  const build = (...more: string[]) =>
    hearthsheet(["build", "cat-abscess-at-home/plan.yaml", "--out", "out", ...more], { cwd });
  build("--format", "html,text,ics");
  writeFileSync(join(cwd, "out/mine.txt"), "mine");
  const { code, err } = build("--format", "text");
  expect(code).toBe(0);
  expect(err).toMatch(/out\/handout\.html:1:1: note\[out-stale-removed\]/);
  expect(readdirSync(join(cwd, "out")).sort()).toEqual(["handout.txt", "mine.txt", "record.json"]);
  rmSync(cwd, { recursive: true });
});

/** Writes package after package, each of its own text, until it is killed. */
const writer = (out: string) => `
  import { createHash } from "node:crypto";
  import { writeWhole } from ${JSON.stringify(pathToFileURL(join(main, "../../io/write-whole.js")).href)};
  for (let round = 0; ; round++) {
    const names = round % 2 ? ["a.txt", "b.txt", "c.txt", "d.txt"] : ["a.txt", "e.txt"];
    const files = names.map((name) => ({ name, bytes: Buffer.from(process.pid + ":" + round + ":" + name) }));
    const named = files.map(({ name, bytes }) => ({ name, sha256: createHash("sha256").update(bytes).digest("hex") }));
    const record = Buffer.from(JSON.stringify({ format: "hearthsheet-record/1", files: named }));
    await writeWhole(${JSON.stringify(out)}, [...files, { name: "record.json", bytes: record }]);
    if (round === 0) console.log("begun");
  }`;

it("killed at any moment, a folder with a record holds exactly what it names, and the next build makes it whole", async () => {
  const rounds = Number(process.env["HEARTHSHEET_KILLS"] ?? 12);
  for (let round = 0; round < rounds; round++) {
    const child = spawn(process.execPath, ["--input-type=module", "-e", writer(folder)], {
      stdio: ["ignore", "pipe", "ignore"],
    });
    await once(child.stdout, "data");
    await new Promise((resolve) => setTimeout(resolve, (round * 7) % 40));
    child.kill("SIGKILL");
    await once(child, "exit");
    if (existsSync(join(folder, "record.json"))) {
      const { files } = JSON.parse(readFileSync(join(folder, "record.json"), "utf8"));
      for (const { name, sha256: hash } of files) expect(sha256(readFileSync(join(folder, name)))).toBe(hash);
      expect(readdirSync(folder).filter((name) => name.endsWith(".txt")).length).toBe(files.length);
    }
    // The lock of the killed process is taken over when it has grown stale; here it is cleared, to save the wait.
    rmSync(join(folder, ".hearthsheet.lock"), { recursive: true, force: true });
  }
  const last = spawn(process.execPath, ["--input-type=module", "-e", writer(folder)], {
    stdio: ["ignore", "pipe", "ignore"],
  });
  await once(last.stdout, "data");
  last.kill("SIGTERM");
  await once(last, "exit");
  expect(readdirSync(folder).filter((name) => name.endsWith(".txt")).length).toBeGreaterThan(0);
});

it("takes over the lock of a process that was killed", async () => {
  const child = spawn(process.execPath, ["--input-type=module", "-e", writer(folder)], {
    stdio: ["ignore", "pipe", "ignore"],
  });
  await once(child.stdout, "data");
  child.kill("SIGKILL");
  await once(child, "exit");
  const cwd = copyOfExamples();
  const { code } = hearthsheet(["build", "cat-abscess-at-home/plan.yaml", "--out", folder, "--format", "text"], {
    cwd,
  });
  expect(code).toBe(0);
  expect(readdirSync(folder).sort()).toEqual(["handout.txt", "record.json"]);
  rmSync(cwd, { recursive: true });
});
