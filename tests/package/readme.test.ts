import { Buffer } from "node:buffer";
import { readFileSync } from "node:fs";
import { PNG } from "pngjs";
import { expect, it } from "vitest";

const readme = readFileSync("README.md", "utf8");
const scripts: Record<string, string> = JSON.parse(readFileSync("package.json", "utf8")).scripts;

it("every picture of the README is there, has words, and shows something", () => {
  const pictures = [...readme.matchAll(/!\[([^\]]*)\]\(([^)]+)\)/g)];
  expect(pictures.length).toBeGreaterThan(5);
  for (const [, words = "", path = ""] of pictures) {
    const { data } = PNG.sync.read(Buffer.from(readFileSync(path)));
    const dark = data.filter((value, i) => i % 4 === 0 && value < 100).length;
    expect([path, words.length > 10, dark > 500]).toEqual([path, true, true]);
  }
});

it("every npm script the README and DEVELOPERS.md name is one", () => {
  const text = readme + readFileSync("DEVELOPERS.md", "utf8");
  const named = [...text.matchAll(/npm run (?:-s |--silent )?([a-z][\w-]*)/g)].map(([, name = ""]) => name);
  expect(named).toContain("gallery");
  expect(named.filter((name) => !(name in scripts))).toEqual([]);
});
