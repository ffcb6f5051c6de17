import { createHash } from "node:crypto";
import { readdir, readFile } from "node:fs/promises";
import { createRequire } from "node:module";
import { join, relative, sep } from "node:path";
import { fileURLToPath } from "node:url";
import { version } from "./shipped.js";

/** Where the running code lies: src or dist. */
const code = fileURLToPath(new URL("../", import.meta.url));

/** The versions of the tool, of the machine under it, and of each library it stands on: { hearthsheet: "0.1.0", node: "20.19.0" }. */
export async function versions(): Promise<Record<string, string>> {
  const about = join(code, "../package.json");
  const { dependencies }: { dependencies: Record<string, string> } = JSON.parse(await readFile(about, "utf8"));
  const found = await Promise.all(
    Object.keys(dependencies).map(async (name): Promise<[string, string]> => [name, await versionOf(name, about)]),
  );
  return { hearthsheet: await version(), node: process.versions.node, ...Object.fromEntries(found) };
}

/** A package may hide its package.json; it lies in the first node_modules that has it. */
async function versionOf(name: string, from: string): Promise<string> {
  for (const folder of createRequire(from).resolve.paths(name) ?? []) {
    const text = await readFile(join(folder, name, "package.json"), "utf8").catch(() => null);
    if (text !== null) return String(JSON.parse(text).version);
  }
  return "unknown";
}

/** What ships, by the name people know it by, as one hash each: "templates", "tables", "fonts", "locales/es", and "code". */
export async function shippedHashes(files: Record<string, Uint8Array>): Promise<Record<string, string>> {
  const entries = await readdir(code, { recursive: true, withFileTypes: true });
  const own = entries
    .filter((entry) => entry.isFile() && /\.[jt]s$/.test(entry.name))
    .map((entry) => relative(code, join(entry.parentPath, entry.name)).split(sep).join("/"));
  const all: [string, Uint8Array][] = [
    ...Object.entries(files),
    ...(await Promise.all(
      own.map(async (path): Promise<[string, Uint8Array]> => [`code/${path}`, await readFile(join(code, path))]),
    )),
  ];
  const groups = new Map<string, [string, Uint8Array][]>();
  for (const file of all) groups.set(groupOf(file[0]), [...(groups.get(groupOf(file[0])) ?? []), file]);
  return Object.fromEntries([...groups].map(([name, group]) => [name, hashOf(group)]));
}

const groupOf = (path: string): string => {
  const [first = "", second = ""] = path.split("/");
  if (first === "locales") return `locales/${second}`;
  return first === "shared" ? "tables" : first;
};

function hashOf(files: readonly [string, Uint8Array][]): string {
  const hash = createHash("sha256");
  for (const [path, bytes] of files.toSorted(([a], [b]) => (a < b ? -1 : 1)))
    hash.update(`${path} ${bytes.length}\n`).update(bytes);
  return hash.digest("hex");
}
