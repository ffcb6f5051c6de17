import { execFileSync, spawnSync } from "node:child_process";
import {
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, describe, expect, it } from "vitest";

const home = fileURLToPath(new URL("../../", import.meta.url));
const lock: { packages: Record<string, { dev?: boolean; devOptional?: boolean; optional?: boolean }> } = JSON.parse(
  readFileSync(join(home, "package-lock.json"), "utf8"),
);
/** What an installation without development packages has, as the lock file says it. */
const production = Object.entries(lock.packages)
  .filter(([path, { dev, devOptional }]) => path !== "" && !dev && !devOptional)
  .map(([path]) => path)
  .filter((path) => existsSync(join(home, path)));

let folder = "";
let listed: string[] = [];
let [packed, unpacked] = [0, 0];
/** In a clean folder: the tarball as npm packs it, beside the packages it asks for and no other. */
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "pack-"));
  const source = join(folder, "source");
  for (const part of ["src", "templates", "locales", "shared", "fonts", "package.json", "README.md", "LICENSE"])
    cpSync(join(home, part), join(source, part), { recursive: true });
  for (const part of ["tsconfig.json", "tsconfig.build.json"]) cpSync(join(home, part), join(source, part));
  cpSync(join(home, "scripts"), join(source, "scripts"), { recursive: true });
  symlinkSync(join(home, "node_modules"), join(source, "node_modules"));
  const json = execFileSync("npm", ["pack", "--json", "--silent", "--offline", "--pack-destination", folder], {
    ...{ cwd: source, encoding: "utf8", env: { ...process.env, npm_config_loglevel: "silent" } },
  });
  const [{ filename, files, size, unpackedSize }] = JSON.parse(json.slice(json.indexOf("[")));
  listed = files.map(({ path }: { path: string }) => path);
  [packed, unpacked] = [size, unpackedSize];
  const installed = join(folder, "clean/node_modules/hearthsheet");
  mkdirSync(installed, { recursive: true });
  execFileSync("tar", ["-xzf", join(folder, filename), "-C", installed, "--strip-components", "1"]);
  rmSync(source, { recursive: true });
  for (const path of production.filter((path) => !path.slice("node_modules/".length).includes("node_modules/"))) {
    mkdirSync(dirname(join(folder, "clean", path)), { recursive: true });
    symlinkSync(join(home, path), join(folder, "clean", path));
  }
  cpSync(join(home, "examples"), join(folder, "clean/examples"), { recursive: true });
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const readme = readFileSync(join(home, "README.md"), "utf8");
const clean = () => join(folder, "clean");
const { bin } = JSON.parse(readFileSync(join(home, "package.json"), "utf8"));
const cli = (node: string[], args: string[], prefix: string[] = []) => {
  const [command = "", ...rest] = [...prefix, process.execPath, ...node];
  const { status, stderr } = spawnSync(
    command,
    [...rest, join(clean(), "node_modules/hearthsheet", bin.hearthsheet), ...args],
    { cwd: clean(), encoding: "utf8", env: { PATH: process.env["PATH"] } },
  );
  return { code: status, err: stderr };
};
const build = (out: string, ...formats: string[]) => [
  ...["build", "examples/dog-cheek-abscess/plan.yaml", "--out", out, "--today", "2026-03-02", "--case", `${out}-case`],
  ...["--format", formats.join(",") || "pdf,html,text,ics,sms,eml"],
];

describe("the package as it is installed", () => {
  it("holds what runs and nothing that only we need", () => {
    for (const needed of ["dist/index.js", "dist/index.d.ts", "dist/cli/main.js", "shared/visits.json", "LICENSE"])
      expect(listed).toContain(needed);
    expect(listed.filter((path) => /^(tests|scripts|examples|out|node_modules)\//.test(path))).toEqual([]);
    expect(packed).toBeLessThan(9_000_000);
    // The README states the sizes; they are true to a tenth.
    const [, small, large] = /package of ([\d.]+) MB \(([\d.]+) MB unpacked/.exec(readme) ?? [];
    for (const [said, bytes] of [
      [small, packed],
      [large, unpacked],
    ] as const)
      expect(Math.abs(Number(said) - bytes / 1e6)).toBeLessThan(bytes / 1e7);
  });

  it("builds a package from the command line", () => {
    const { code, err } = cli([], build("out"));
    expect(code, err).toBe(0);
    expect(readdirSync(join(clean(), "out")).sort()).toEqual([
      ...["handout.eml", "handout.html", "handout.pdf", "handout.txt", "messages.txt", "rechecks.ics", "record.json"],
    ]);
  });

  it("is imported as a module, by its two doors and by no other", () => {
    const script = `
      import { openHouse, topics } from "hearthsheet";
      import { shippedFiles } from "hearthsheet/shipped";
      const { value } = openHouse(await shippedFiles());
      const inner = await import("hearthsheet/dist/cli/main.js").then(() => "open", ({ code }) => code);
      console.log(JSON.stringify([topics(value, "en").length > 0, inner]));`;
    const out = execFileSync(process.execPath, ["--input-type=module", "-e", script], {
      cwd: clean(),
      encoding: "utf8",
    });
    expect(JSON.parse(out)).toEqual([true, "ERR_PACKAGE_PATH_NOT_EXPORTED"]);
  });

  it("has types that a strict program compiles with", () => {
    cpSync(join(home, "examples/library.ts"), join(clean(), "library.ts"));
    const wrong = `import { openHouse } from "hearthsheet";\nopenHouse(7);\n`;
    writeFileSync(join(clean(), "wrong.ts"), wrong);
    writeFileSync(join(clean(), "package.json"), '{ "type": "module" }');
    symlinkSync(join(home, "node_modules/@types/node"), join(clean(), "node_modules/@types/node"));
    const tsc = (file: string) =>
      spawnSync(
        process.execPath,
        [
          join(home, "node_modules/typescript/bin/tsc"),
          "--noEmit",
          "--strict",
          "--skipLibCheck",
          "--target",
          "es2022",
          "--module",
          "nodenext",
          file,
        ],
        { cwd: clean(), encoding: "utf8" },
      );
    expect(tsc("library.ts").stdout).toBe("");
    expect(tsc("wrong.ts").stdout).toContain("wrong.ts(2,11)");
  });
});

describe("nothing leaves the machine", () => {
  /** Whatever would reach a network throws, and says so. */
  const watch = `
    import { writeSync } from "node:fs"; import net from "node:net"; import dns from "node:dns"; import dgram from "node:dgram";
    import { syncBuiltinESMExports } from "node:module";
    const no = (what) => () => { writeSync(2, "NETWORK " + what); process.exit(99); };
    net.Socket.prototype.connect = no("connect"); net.Server.prototype.listen = no("listen"); net.connect = net.createConnection = no("connect");
    dgram.createSocket = no("datagram"); globalThis.fetch = no("fetch");
    for (const name of Object.keys(dns)) if (/^(lookup|resolve)/.test(name)) dns[name] = dns.promises[name] = no(name);
    syncBuiltinESMExports();`;
  const watched = ["--import", `data:text/javascript,${encodeURIComponent(watch)}`];

  it("when a package is built, in every format", () => {
    const { code, err } = cli(watched, build("out-watched"));
    expect([code, err.includes("NETWORK")], err).toEqual([0, false]);
    expect(cli(watched, ["verify", "out-watched-case"]).code).toBe(0);
  });

  it("and the watch would have seen it: a letter that is sent is stopped by it", () => {
    const { code, err } = cli(watched, [
      "send",
      "out",
      "--yes",
      "--smtp",
      "smtp://127.0.0.1:9",
      "--ledger",
      "l/sent.jsonl",
    ]);
    expect([code, err.includes("NETWORK connect")], err).toEqual([99, true]);
  });

  const alone = spawnSync("unshare", ["-n", "true"]).status === 0;
  it.runIf(alone)("where there is no network at all", () => {
    const { code, err } = cli([], build("out-alone", "text", "ics"), ["unshare", "-n"]);
    expect(code, err).toBe(0);
  });
});
