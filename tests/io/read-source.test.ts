import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync, truncateSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, expect, it } from "vitest";
import { limit, readSource } from "../../src/io/read-source.js";

const folder = mkdtempSync(join(tmpdir(), "hearthsheet-"));
afterAll(() => rmSync(folder, { recursive: true }));
const codes = async (path: string) => (await readSource(path)).problems.map(({ code }) => code);

it("gives the bytes as they are", async () => {
  const path = join(folder, "plan.yaml");
  const bytes = Uint8Array.from([0xef, 0xbb, 0xbf, 0, 13, 10, 255]);
  writeFileSync(path, bytes);
  const { value } = await readSource(path, "plan.yaml");
  expect(value?.file).toBe("plan.yaml");
  expect(Buffer.compare(value?.bytes ?? Buffer.of(), bytes)).toBe(0);
});

it("takes a file of just the limit, and refuses one byte more", async () => {
  const path = join(folder, "large.yaml");
  writeFileSync(path, "");
  truncateSync(path, limit);
  expect((await readSource(path)).value?.bytes.length).toBe(limit);
  truncateSync(path, limit + 1);
  expect((await readSource(path)).problems).toMatchObject([
    { code: "file-too-large", values: { bytes: limit + 1, limit } },
  ]);
});

it("tells what is in the way", async () => {
  expect(await codes(join(folder, "none.yaml"))).toEqual(["file-not-found"]);
  expect(await codes(join(folder, "plan.yaml", "inside"))).toEqual(["file-not-found"]);
  expect(await codes(folder)).toEqual(["file-is-folder"]);
  expect(await codes(join(folder, "x".repeat(5000)))).toEqual(["file-unreadable"]);
});

it("reads no more of an endless file than the limit", async () => {
  expect(await codes("/dev/zero")).toEqual(["file-too-large"]);
});

it("reads a pipe", async () => {
  const path = join(folder, "pipe");
  execFileSync("mkfifo", [path]);
  const reading = readSource(path);
  writeFileSync(path, "format: hearthsheet/1");
  expect(Buffer.from((await reading).value?.bytes ?? []).toString()).toBe("format: hearthsheet/1");
});
