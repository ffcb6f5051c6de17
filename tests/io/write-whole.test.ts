import {
  chmodSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, it } from "vitest";
import { writeWhole } from "../../src/io/write-whole.js";

let folder = "";
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "hearthsheet-"));
});
afterEach(() => rmSync(folder, { recursive: true }));

const bytes = (text: string) => new TextEncoder().encode(text);
const modeOf = (path: string) => statSync(path).mode & 0o777;
const codes = async (out: string, files: { name: string; bytes: Uint8Array }[]) =>
  (await writeWhole(out, files)).problems.map(({ code }) => code);

it("makes folders and files that only their owner can read, and leaves nothing else behind", async () => {
  const out = join(folder, "a/b");
  const files = [
    { name: "handout.txt", bytes: bytes("text") },
    { name: "record.json", bytes: bytes("{}") },
  ];
  expect(await writeWhole(out, files)).toEqual({
    value: [join(out, "handout.txt"), join(out, "record.json")],
    problems: [],
  });
  expect([modeOf(join(folder, "a")), modeOf(out)]).toEqual([0o700, 0o700]);
  expect(modeOf(join(out, "handout.txt"))).toBe(0o600);
  expect(readdirSync(out)).toEqual(["handout.txt", "record.json"]);
});

it("writes over a file of before, closing it to others, and leaves the folder's own mode alone", async () => {
  chmodSync(folder, 0o755);
  writeFileSync(join(folder, "handout.txt"), "before", { mode: 0o644 });
  writeFileSync(join(folder, "notes.txt"), "mine");
  await writeWhole(folder, [{ name: "handout.txt", bytes: bytes("after") }]);
  expect(readFileSync(join(folder, "handout.txt"), "utf8")).toBe("after");
  expect(readFileSync(join(folder, "notes.txt"), "utf8")).toBe("mine");
  expect([modeOf(folder), modeOf(join(folder, "handout.txt"))]).toEqual([0o755, 0o600]);
});

it("replaces a link, and does not write through it", async () => {
  writeFileSync(join(folder, "elsewhere"), "before");
  symlinkSync(join(folder, "elsewhere"), join(folder, "handout.txt"));
  await writeWhole(folder, [{ name: "handout.txt", bytes: bytes("after") }]);
  expect(readFileSync(join(folder, "elsewhere"), "utf8")).toBe("before");
  expect(readFileSync(join(folder, "handout.txt"), "utf8")).toBe("after");
});

it("changes nothing when one of the files cannot be put in place", async () => {
  writeFileSync(join(folder, "a.txt"), "before");
  mkdirSync(join(folder, "b.txt"));
  const files = [
    { name: "a.txt", bytes: bytes("after") },
    { name: "b.txt", bytes: bytes("after") },
  ];
  expect(await codes(folder, files)).toEqual(["out-not-file"]);
  expect(readFileSync(join(folder, "a.txt"), "utf8")).toBe("before");
  expect(readdirSync(folder).sort()).toEqual(["a.txt", "b.txt"]);
});

it("changes nothing when writing fails half-way", async () => {
  writeFileSync(join(folder, "a.txt"), "before");
  const files = [
    { name: "a.txt", bytes: bytes("after") },
    { name: "x".repeat(300), bytes: bytes("a name no file system takes") },
  ];
  expect(await codes(folder, files)).toEqual(["out-failed"]);
  expect(readFileSync(join(folder, "a.txt"), "utf8")).toBe("before");
  expect(readdirSync(folder)).toEqual(["a.txt"]);
});

it("tells that the folder is a file", async () => {
  const path = join(folder, "file");
  writeFileSync(path, "mine");
  expect(await codes(path, [])).toEqual(["out-not-folder"]);
  expect(await codes(join(path, "inside"), [])).toEqual(["out-not-folder"]);
  expect(readFileSync(path, "utf8")).toBe("mine");
});
