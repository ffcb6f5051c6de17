import { spawn, spawnSync } from "node:child_process";
import { once } from "node:events";
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import { fileURLToPath } from "node:url";
import { afterEach, beforeEach, expect, it } from "vitest";
import { parse } from "yaml";
import { inOrder } from "../../src/cli/in-order.js";
import { copyOfExamples, hearthsheet, main } from "./hearthsheet.js";

let folder = "";
beforeEach(() => {
  folder = copyOfExamples();
});
afterEach(() => rmSync(folder, { recursive: true, maxRetries: 5 }));

const plans = 8;
const bad = [2, 5];
const names = Array.from({ length: plans }, (_, i) => `many/p${i}/plan.yaml`);

/** Plans of one case, no two alike; the bad ones lack a unit. */
function writePlans(): void {
  const text = readFileSync(join(folder, "cat-abscess-at-home/plan.yaml"), "utf8");
  for (const [i, name] of names.entries()) {
    mkdirSync(join(folder, `many/p${i}`), { recursive: true });
    const weight = bad.includes(i) ? "weight: 4.2 " : `weight: 4.${i} kg `;
    const own = text.replace("../clinic.yaml", "../../clinic.yaml").replace("Clementine", `Cat ${i}`);
    writeFileSync(join(folder, name), own.replace("weight: 4.2 kg ", weight));
  }
}
const flags = (out: string, ...more: string[]) => [
  "--format",
  "text,ics",
  "--out",
  out,
  "--today",
  "2026-03-05",
  ...more,
];
const build = (out: string, ...more: string[]) =>
  hearthsheet(["build", ...names, ...flags(out, ...more)], { cwd: folder });
const filesOf = (out: string): Record<string, string> =>
  Object.fromEntries(
    readdirSync(join(folder, out), { recursive: true, encoding: "utf8" })
      .filter((name) => statSync(join(folder, out, name)).isFile() && !name.includes("batch"))
      .sort()
      .map((name) => [name, readFileSync(join(folder, out, name), "utf8")]),
  );

it("several jobs say and write what one does, in the order of the plans, and a bad plan stops no other", () => {
  writePlans();
  const one = build("out");
  const alone = filesOf("out");
  rmSync(join(folder, "out"), { recursive: true });
  const three = build("out", "--jobs", "3");
  expect(three).toEqual(one);
  expect(one.code).toBe(1);
  expect(filesOf("out")).toEqual(alone);
  expect(readdirSync(join(folder, "out")).filter((name) => name.startsWith("p"))).toHaveLength(plans - bad.length);
  expect(three.err).toContain(`Plans: ${plans}. Ready: ${plans - bad.length}. Not ready: ${bad.length}.`);
});

it("a stream of lines is built by several jobs, each line into its own folder", () => {
  const cat = parse(readFileSync(join(folder, "cat-abscess-at-home/plan.yaml"), "utf8"), { schema: "failsafe" });
  const lines = [1, 2, 3, 4].map((i) =>
    i === 3
      ? "{not JSON"
      : JSON.stringify({ ...cat, clinic: "clinic.yaml", patient: { ...cat.patient, name: `Cat ${i}` } }),
  );
  const args = ["build", "-", ...flags("out", "--jobs", "2", "--json")];
  const { code, out } = hearthsheet(args, { cwd: folder, input: lines.join("\n") });
  expect(code).toBe(1);
  const results = out
    .trim()
    .split("\n")
    .map((line) => JSON.parse(line));
  expect(results.map(({ plan, ready }) => [plan, ready])).toEqual([
    ["-:1", true],
    ["-:2", true],
    ["-:3", false],
    ["-:4", true],
  ]);
  expect(readFileSync(join(folder, "out/line-4/handout.txt"), "utf8")).toContain("Cat 4");
});

it("goes on after a kill with what was left, and builds again what has changed since", async () => {
  writePlans();
  const good = plans - bad.length;
  const child = spawn(process.execPath, [main, "build", ...names, ...flags("out", "--jobs", "2")], { cwd: folder });
  const journal = join(folder, "out/.hearthsheet-batch.jsonl");
  while (!existsSync(journal) || readFileSync(journal, "utf8").split("\n").length < 3) await pause(20);
  child.kill("SIGKILL");
  await once(child, "exit");
  const before = readFileSync(journal, "utf8").trim().split("\n").length;
  expect(before).toBeLessThan(good);
  expect(statSync(journal).mode & 0o777).toBe(0o600);
  expect(readFileSync(journal, "utf8")).not.toMatch(/Cat|Whitlow/);

  const rest = build("out", "--resume");
  const written = rest.out.split("\n").filter((line) => line.endsWith("handout.txt"));
  expect(written).toHaveLength(good - before);
  expect(rest.err).toContain(`Ready: ${good}.`);
  rmSync(join(folder, "alone"), { recursive: true, force: true });
  build("alone");
  expect(filesOf("out")).toEqual(filesOf("alone"));

  writeFileSync(
    join(folder, names[0] ?? ""),
    readFileSync(join(folder, names[0] ?? ""), "utf8").replace("Cat 0", "Cat X"),
  );
  const again = build("out", "--resume")
    .out.split("\n")
    .filter((line) => line.endsWith("handout.txt"));
  expect(again).toEqual(["out/p0/handout.txt"]);
});

it("shows a bar on a terminal", () => {
  writePlans();
  const driver = fileURLToPath(new URL("./terminal.py", import.meta.url));
  const args = [driver, "60", "[]", process.execPath, main, "build", ...names.slice(0, 2), ...flags("out")];
  const { stdout } = spawnSync("python3", args, { cwd: folder, encoding: "utf8" });
  expect(stdout).toContain("##########---------- 1/2");
});

it("begins no more than it may, and keeps the order", async () => {
  let [running, most] = [0, 0];
  async function* numbers() {
    for (let i = 0; i < 200; i++) yield i;
  }
  const work = async (i: number) => {
    running += 1;
    most = Math.max(most, running);
    await pause((i * 7) % 5);
    running -= 1;
    return i;
  };
  const got: number[] = [];
  for await (const one of inOrder(numbers(), work, 6)) got.push(one);
  expect(got).toEqual(Array.from({ length: 200 }, (_, i) => i));
  expect(most).toBeLessThanOrEqual(6);
});
