// Writes LICENCES.md: what an installation brings along, at which version and under which licence.
import { readFileSync, writeFileSync } from "node:fs";

const home = new URL("../", import.meta.url);
const { packages } = JSON.parse(readFileSync(new URL("package-lock.json", home), "utf8"));

/** The lock file has no licence of a package whose package.json names none; its own text tells. */
const read = { "png-js": "MIT" };

const rows = Object.entries(packages)
  .filter(([path, { dev, devOptional }]) => path !== "" && !dev && !devOptional)
  .map(([path, { version, license }]) => {
    const name = path.slice(path.lastIndexOf("node_modules/") + "node_modules/".length);
    return `| ${name} | ${version} | ${license ?? read[name] ?? "unknown"} |`;
  });

const page = [
  "# Licences",
  "",
  "What an installation brings along. Written by `npm run licences`; the tests hold it to package-lock.json.",
  "",
  "| package | version | licence |",
  "| --- | --- | --- |",
  ...[...new Set(rows)].sort(),
  "",
].join("\n");
writeFileSync(new URL("LICENCES.md", home), page);
