import { createHash } from "node:crypto";
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
import { join, relative } from "node:path";
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

/** A package as a build writes it: files of one text, and the record that names them, last. */
const packageOf = (text: string, names: readonly string[]) => {
  const files = names.map((name) => ({ name, bytes: bytes(`${text} ${name}`) }));
  const named = files.map((file) => ({
    name: file.name,
    sha256: createHash("sha256").update(file.bytes).digest("hex"),
  }));
  const record = { format: "hearthsheet-record/1", files: named };
  return [...files, { name: "record.json", bytes: bytes(JSON.stringify(record)) }];
};
const inside = () =>
  readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => !entry.isDirectory())
    .map((entry) => relative(folder, join(entry.parentPath, entry.name)))
    .sort();

it("takes away, and tells, what the build before wrote and this one does not", async () => {
  await writeWhole(folder, packageOf("old", ["en/handout.pdf", "es/handout.pdf", "es/handout.txt"]));
  writeFileSync(join(folder, "notes.txt"), "mine");
  const { problems } = await writeWhole(folder, packageOf("new", ["es/handout.txt"]));
  expect(problems.map(({ code, severity, values }) => [code, severity, values])).toEqual([
    ["out-stale-removed", "note", { path: join(folder, "en/handout.pdf") }],
    ["out-stale-removed", "note", { path: join(folder, "es/handout.pdf") }],
  ]);
  expect(readdirSync(folder).sort()).toEqual(["es", "notes.txt", "record.json"]);
  expect(readFileSync(join(folder, "es/handout.txt"), "utf8")).toBe("new es/handout.txt");
});

it("leaves, and tells, what somebody has changed since", async () => {
  await writeWhole(folder, packageOf("old", ["handout.pdf", "handout.txt"]));
  writeFileSync(join(folder, "handout.pdf"), "with a note by hand");
  expect(await codes(folder, packageOf("new", ["handout.txt"]))).toEqual(["out-changed-kept"]);
  expect(readFileSync(join(folder, "handout.pdf"), "utf8")).toBe("with a note by hand");
});

it.each([
  ["a path out of the folder", "../mine.txt"],
  ["a path out of the folder, further in", "es/../../mine.txt"],
  ["a path from the root", "/tmp/mine.txt"],
  ["a link out of the folder", "link/mine.txt"],
])("takes nothing away for a record that names %s", async (_, name) => {
  const mine = join(folder, "mine.txt");
  const out = join(folder, "out");
  mkdirSync(out);
  writeFileSync(mine, `old ${name}`);
  symlinkSync(folder, join(out, "link"));
  const record = packageOf("old", [name]).at(-1);
  writeFileSync(join(out, "record.json"), record?.bytes ?? "");
  expect(await codes(out, packageOf("new", ["handout.txt"]))).toEqual([]);
  expect(readFileSync(mine, "utf8")).toBe(`old ${name}`);
});

it.each([
  ["not JSON", "{"],
  ["of somebody else", '{"format":"other/1","files":[{"name":"mine.txt","sha256":"x"}]}'],
])("takes nothing away for a record that is %s", async (_, text) => {
  writeFileSync(join(folder, "mine.txt"), "mine");
  writeFileSync(join(folder, "record.json"), text);
  expect(await codes(folder, packageOf("new", ["handout.txt"]))).toEqual([]);
  expect(inside()).toEqual(["handout.txt", "mine.txt", "record.json"]);
});

it("puts everything back where the last step fails", async () => {
  const before = packageOf("old", ["handout.pdf", "handout.txt"]);
  await writeWhole(folder, before);
  // A folder stands where a file's folder should be made: this shows only when the files are put in place.
  writeFileSync(join(folder, "es"), "a file, so nothing can go into it");
  expect(await codes(folder, packageOf("new", ["handout.txt", "es/handout.txt"]))).toEqual(["out-not-folder"]);
  expect(inside()).toEqual(["es", "handout.pdf", "handout.txt", "record.json"]);
  for (const file of before) expect(readFileSync(join(folder, file.name))).toEqual(Buffer.from(file.bytes));
});

it("two at once leave one whole package", async () => {
  const names = ["a.txt", "b.txt", "c.txt"];
  const done = await Promise.all(["one", "two", "three"].map((text) => writeWhole(folder, packageOf(text, names))));
  expect(done.flatMap(({ problems }) => problems)).toEqual([]);
  const texts = names.map((name) => readFileSync(join(folder, name), "utf8").split(" ")[0]);
  expect(new Set(texts).size).toBe(1);
  expect(inside()).toEqual([...names, "record.json"]);
});
