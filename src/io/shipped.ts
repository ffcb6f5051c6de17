import { readdir, readFile } from "node:fs/promises";
import { createRequire } from "node:module";
import { join, relative, sep } from "node:path";
import { fileURLToPath } from "node:url";

/** The package's own folder: two above this file, in src as in dist. */
const home = fileURLToPath(new URL("../../", import.meta.url));

const folders = ["templates", "locales", "shared"];

/** The names the stages know the fonts by, and where the font packages keep them. */
const fonts = {
  "fonts/pdf-regular.ttf":
    "@expo-google-fonts/atkinson-hyperlegible-next/400Regular/AtkinsonHyperlegibleNext_400Regular.ttf",
  "fonts/pdf-bold.ttf": "@expo-google-fonts/atkinson-hyperlegible-next/700Bold/AtkinsonHyperlegibleNext_700Bold.ttf",
  "fonts/web-regular.woff2":
    "@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-400-normal.woff2",
  "fonts/web-bold.woff2":
    "@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-700-normal.woff2",
};

/**
 * Everything that ships with the package, as bytes by name: "templates/...", "locales/...", "shared/..." as they lie in
 * it, and the fonts. This is what openHouse takes.
 */
export async function shippedFiles(): Promise<Record<string, Uint8Array>> {
  const { resolve } = createRequire(import.meta.url);
  const own = (await Promise.all(folders.map((folder) => filesUnder(join(home, folder))))).flat();
  const paths = [
    ...own.map((path): [string, string] => [relative(home, path).split(sep).join("/"), path]),
    ...Object.entries(fonts).map(([name, path]): [string, string] => [name, resolve(path)]),
  ];
  return Object.fromEntries(
    await Promise.all(paths.map(async ([name, path]): Promise<[string, Uint8Array]> => [name, await readFile(path)])),
  );
}

/** The version of the package: "0.1.0". */
export async function version(): Promise<string> {
  const about: { version: string } = JSON.parse(await readFile(join(home, "package.json"), "utf8"));
  return about.version;
}

/** In one order on every machine. */
async function filesUnder(folder: string): Promise<string[]> {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true });
  return entries
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name))
    .sort();
}
