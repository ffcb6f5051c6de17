import { execFileSync } from "node:child_process";
import { mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { readCases } from "#cli/case.js";
import { packageOf } from "#cli/package.js";
import { compute, openHouse, pricesPath, readPlan } from "#index.js";
import { shippedFiles } from "#io/shipped.js";
import { copyOfExamples } from "../cli/hearthsheet.js";

const text = (file: string) => readFileSync(file, "utf8");
const source = (file: string, words: string) => ({ file, bytes: new TextEncoder().encode(words) });
const plan = source("plan.yaml", text("examples/dog-cheek-abscess/plan.yaml"));
const clinic = source("clinic.yaml", text("examples/clinic.yaml"));
const house = openHouse(await shippedFiles()).value;
const listed = text("examples/prices.yaml");

/** "code file:line [the words pointed at]" of each problem. */
function told(prices: string | null, profile = clinic): string[] {
  const sources = { plan, clinic: profile, ...(prices === null ? {} : { prices: source("prices.yaml", prices) }) };
  const lines = Object.values(sources).map(({ file, bytes }) => ({
    file,
    lines: new TextDecoder().decode(bytes).split("\n"),
  }));
  return readPlan(sources, { today: "2026-03-02" }).problems.map(({ code, at }) => {
    const line = lines.find(({ file }) => file === at.file)?.lines[at.line - 1] ?? "";
    return `${code} ${at.file}:${at.line} [${line.slice(at.column - 1, at.column - 1 + at.length)}]`;
  });
}
const lineOf = (words: string, file: string) => file.split("\n").findIndex((line) => line.includes(words)) + 1;

describe("a price list of its own", () => {
  test("is named from the profile, and read as if it stood there", () => {
    expect(pricesPath({ plan, clinic })).toBe("prices.yaml");
    const apart = readPlan({ plan, clinic, prices: source("prices.yaml", listed) }, { today: "2026-03-02" });
    const inline = text("examples/clinic.yaml").replace("prices: prices.yaml\n", `prices:\n${listed}`);
    expect(pricesPath({ plan, clinic: source("clinic.yaml", inline) })).toBeNull();
    const together = readPlan({ plan, clinic: source("clinic.yaml", inline) }, { today: "2026-03-02" });
    expect(apart.value?.clinic).toEqual(together.value?.clinic);
    expect(apart.value?.clinic.prices.length).toBeGreaterThan(5);
    expect(apart.value?.places["clinic/prices/0/item"]).toMatchObject({ file: "prices.yaml", line: 2, column: 9 });
  });

  test("that is not there is told where it is named", () => {
    expect(told(null)).toEqual([
      `file-not-found clinic.yaml:${lineOf("prices:", text("examples/clinic.yaml"))} [prices.yaml]`,
    ]);
  });

  test.each([
    ["a negative price", "price: 62.00", "price: -62.00", "price-negative", "-62.00"],
    ["a price that is none", "price: 62.00", "price: sixty", "price-unreadable", "sixty"],
    ["a field nobody knows", "  per: visit", "  pre: visit", "field-unknown", "pre"],
    ["an unknown way to charge", "  per: visit", "  per: vist", "not-a-choice", "vist"],
    ["a weight without its unit", "up to: 10 kg", "up to: 10", "unit-missing", "10"],
  ])("with %s is told at the words", (_, from, to, code, words) => {
    const changed = listed.replace(from, to);
    expect(told(changed)).toEqual([`${code} prices.yaml:${lineOf(to, changed)} [${words}]`]);
  });

  test("that is no list, no YAML or empty", () => {
    expect(told("prices: 3\n")).toEqual(["wrong-shape prices.yaml:1 [prices: 3]"]);
    expect(told("- {")[0]).toMatch(/^yaml-syntax prices\.yaml:1/);
    expect(told(" ")).toEqual(["file-empty prices.yaml:1 [ ]"]);
  });

  test("has its problems told beside those of the profile", () => {
    const profile = source("clinic.yaml", text("examples/clinic.yaml").replace("visit: 20 min", "visit: 20"));
    expect(told(listed.replace("62.00", "-1"), profile).map((line) => line.split(" ").slice(0, 2).join(" "))).toEqual([
      expect.stringMatching(/^unit-missing clinic\.yaml/),
      expect.stringMatching(/^price-negative prices\.yaml/),
    ]);
  });
});

describe("on the command line", () => {
  let folder = "";
  beforeAll(() => {
    folder = copyOfExamples();
  });
  afterAll(() => rmSync(folder, { recursive: true }));
  const theDog = async () => {
    for await (const one of readCases(
      house ?? expect.fail(),
      [join(folder, "dog-cheek-abscess/plan.yaml")],
      "2026-03-02",
    ))
      return one;
    throw new Error("no case");
  };

  test("is looked for beside the profile, and its hash kept", async () => {
    mkdirSync(join(folder, "lists"));
    const profile = readFileSync(join(folder, "clinic.yaml"), "utf8").replace("prices: p", "prices: lists/p");
    writeFileSync(join(folder, "clinic.yaml"), profile);
    writeFileSync(join(folder, "lists/prices.yaml"), listed);
    rmSync(join(folder, "prices.yaml"));
    const { plan, texts } = await theDog();
    const facts = house && plan.value && compute(plan.value, house).value;
    if (!house || !facts) throw new Error("no facts");
    const settled = { open: [], allowed: [], notes: [] };
    const { files } = await packageOf({ texts, facts, drawn: [], settled }, house);
    const [sum] = execFileSync("sha256sum", [join(folder, "lists/prices.yaml")], { encoding: "utf8" }).split(" ");
    expect(JSON.parse(new TextDecoder().decode(files[0]?.bytes)).prices).toEqual({ sha256: sum });
  });

  test("that cannot be read says why, where it is named", async () => {
    rmSync(join(folder, "lists/prices.yaml"));
    mkdirSync(join(folder, "lists/prices.yaml"));
    const { plan } = await theDog();
    const at = { file: join(folder, "clinic.yaml"), line: expect.any(Number), column: 9 };
    expect(plan.problems).toMatchObject([{ code: "file-is-folder", at }]);
    expect(plan.value).toBeNull();
  });
});
