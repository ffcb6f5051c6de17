import { readFileSync } from "node:fs";
import { expect, it } from "vitest";

const text = (file: string) => readFileSync(new URL(`../../${file}`, import.meta.url), "utf8");
const { dependencies, devDependencies } = JSON.parse(text("package.json"));
const { packages } = JSON.parse(text("package-lock.json"));
const rows = [...text("LICENCES.md").matchAll(/^\| (\S+) \| (\d\S*) \| (.+) \|$/gm)].map(
  ([, name, version, licence]) => ({
    name,
    version,
    licence,
  }),
);

/**
 * Licences that let anyone use, change and pass on what they are for, if they keep its notice. MPL-2.0 asks besides that a
 * changed file of the package itself stay under it; we change none.
 */
const free = new Set([
  ...["0BSD", "Apache-2.0", "BlueOak-1.0.0", "BSD-2-Clause", "BSD-3-Clause", "ISC", "MIT", "MIT-0", "MPL-2.0"],
  ...["PSF-2.0", "Unlicense", "OFL-1.1", "CC-BY-3.0"],
]);

it("every package of an installation is listed with its version, and its licence is a free one", () => {
  const installed = Object.entries<{ version: string; dev?: boolean; devOptional?: boolean }>(packages)
    .filter(([path, { dev, devOptional }]) => path !== "" && !dev && !devOptional)
    .map(([path, { version }]) => `${path.slice(path.lastIndexOf("node_modules/") + 13)} ${version}`);
  expect(rows.map(({ name, version }) => `${name} ${version}`).sort()).toEqual([...new Set(installed)].sort());
  const others = rows.filter(
    ({ licence = "" }) =>
      !licence
        .replace(/[()]/g, "")
        .split(/ AND | OR /)
        .every((one) => free.has(one)),
  );
  expect(others).toEqual([]);
});

it("every package that we ask for is pinned to one version", () => {
  const loose = Object.entries<string>({ ...dependencies, ...devDependencies }).filter(
    ([, version]) => !/^\d+\.\d+\.\d+$/.test(version),
  );
  expect(loose).toEqual([]);
});
