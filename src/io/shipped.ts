import { readdirSync, readFileSync } from "node:fs";
import { readFile } from "node:fs/promises";
import { createRequire } from "node:module";
import { join, relative, sep } from "node:path";
import { fileURLToPath } from "node:url";

/** The package's own folder: two above this file, in src as in dist. */
const home = fileURLToPath(new URL("../../", import.meta.url));

const folders = ["templates", "locales", "shared", "fonts"];

/** The names the stages know the first fonts by, and where their packages keep them; the others lie in fonts/. */
const fonts = {
  "fonts/pdf-plain-regular.ttf":
    "@expo-google-fonts/atkinson-hyperlegible-next/400Regular/AtkinsonHyperlegibleNext_400Regular.ttf",
  "fonts/pdf-plain-bold.ttf":
    "@expo-google-fonts/atkinson-hyperlegible-next/700Bold/AtkinsonHyperlegibleNext_700Bold.ttf",
  "fonts/web-plain-regular.woff2":
    "@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-400-normal.woff2",
  "fonts/web-plain-bold.woff2":
    "@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-700-normal.woff2",
};

/**
 * Everything that ships with the package, as bytes by name: "templates/...", "locales/...", "shared/..." as they lie in
 * it, and the fonts. This is what openHouse takes.
 */
export async function shippedFiles(): Promise<Record<string, Uint8Array>> {
  const { resolve } = createRequire(import.meta.url);
  const own = folders.flatMap((folder) => filesUnder(join(home, folder)));
  const paths = [
    ...own.map((path): [string, string] => [relative(home, path).split(sep).join("/"), path]),
    ...Object.entries(fonts).map(([name, path]): [string, string] => [name, resolve(path)]),
  ];
  // Read in turn: hundreds of small files take far longer side by side.
  return Object.fromEntries(paths.map(([name, path]): [string, Uint8Array] => [name, readFileSync(path)]));
}

/** What draws a clinic's logo: the bytes of resvg's WebAssembly. Read only where there is one. */
export const logoEngine = (): Promise<Uint8Array> =>
  readFile(createRequire(import.meta.url).resolve("@resvg/resvg-wasm/index_bg.wasm"));

/** The version of the package: "0.1.0". */
export async function version(): Promise<string> {
  const about: { version: string } = JSON.parse(await readFile(join(home, "package.json"), "utf8"));
  return about.version;
}

/** In one order on every machine. */
function filesUnder(folder: string): string[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name))
    .sort();
}
