import { existsSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { copyOfExamples, hearthsheet, stackTrace } from "./hearthsheet.js";

let folder = "";
beforeEach(() => {
  folder = copyOfExamples();
});
afterEach(() => rmSync(folder, { recursive: true }));

const run = (...args: string[]) => hearthsheet(args, { cwd: folder });
const kept = () => join(folder, "language-reviews.json");
const states = (out: string) =>
  new Map(
    out
      .trim()
      .split("\n")
      .map((line) => JSON.parse(line))
      .map(({ tag, state, reviewed }) => [tag, { state, clinic: reviewed.clinic }]),
  );

describe("hearthsheet languages --review", () => {
  it("is kept beside the clinic profile, for its eyes only, and told from then on", () => {
    expect(states(run("languages", "--json").out).get("es")).toEqual({ state: "unreviewed", clinic: 0 });
    const { code, out } = run("languages", "--review", "es", "--by", "Ana Reyes", "--today", "2026-03-04", "--json");
    expect(code).toBe(0);
    expect(states(out).get("es")?.state).toBe("reviewed");
    expect(JSON.parse(readFileSync(kept(), "utf8"))).toMatchObject([
      { language: "es", by: "Ana Reyes", on: "2026-03-04" },
    ]);
    expect(statSync(kept()).mode & 0o777).toBe(0o600);
    expect(states(run("languages", "--json").out).get("es")?.state).toBe("reviewed");
    // Only what was read counts.
    expect(states(run("languages", "--json").out).get("de")?.state).toBe("unreviewed");
  });

  it("and then the page no longer says that nobody has read it, and its record says who may be asked", () => {
    const page = () => {
      expect(run("build", "dog-cheek-abscess/plan.yaml", "--out", "out", "--format", "text").code).toBe(0);
      return readFileSync(join(folder, "out/handout.txt"), "utf8").replace(/\s+/g, " ");
    };
    expect(page()).toContain("No qualified person has checked this text");
    run("languages", "--review", "es", "--by", "Ana Reyes");
    expect(page()).not.toContain("No qualified person has checked this text");
    expect(JSON.parse(readFileSync(join(folder, "out/record.json"), "utf8")).languages).toMatchObject([
      { language: "es", review: "reviewed" },
    ]);
  });

  it.each([
    [["--review", "es"], "who has read it"],
    [["--by", "Ana"], "one language"],
    [["--review", "es", "--by", "  "], "who has read it"],
    [["--review", "tlh", "--by", "Ana"], "tlh"],
  ])("%j is bad usage and keeps nothing", (args, told) => {
    const { code, err } = run("languages", ...args);
    expect(code).toBe(2);
    expect(err).toContain(told);
    expect(err).not.toMatch(stackTrace);
    expect(existsSync(kept())).toBe(false);
  });

  it("reviews that cannot be read are told, and left as they are", () => {
    writeFileSync(kept(), "{");
    const { code, err } = run("languages", "--review", "es", "--by", "Ana");
    expect(code).not.toBe(0);
    expect(err).toContain("language-reviews.json");
    expect(readFileSync(kept(), "utf8")).toBe("{");
  });
});

describe("hearthsheet build --proof", () => {
  it("lays the owner's words beside the staff's, in files of their own", () => {
    const { code, out } = run("build", "dog-cheek-abscess/plan.yaml", "--out", "out", "--proof", "--format", "text");
    expect(code).toBe(0);
    expect(out).toContain("proof.pdf");
    const page = readFileSync(join(folder, "out/proof.html"), "utf8");
    expect(page).toMatch(/<html lang="en"[^>]*>/);
    expect(page).toMatch(/<th scope="row"[^>]* lang="es" dir="ltr"/);
    expect(readFileSync(join(folder, "out/proof.pdf")).subarray(0, 8).toString()).toBe("%PDF-1.7");
  });

  it("is not made where the owner reads what the staff read, and a note says so", () => {
    const { code, out, err } = run("build", "cat-abscess-at-home/plan.yaml", "--out", "out", "--proof");
    expect(code).toBe(0);
    expect(err).toContain("proof-same-language");
    expect(out).not.toContain("proof.pdf");
  });
});

it("a language is asked for as an owner would, and what is built instead is told", () => {
  const { code, err } = run(
    "build",
    "cat-abscess-at-home/plan.yaml",
    "--out",
    "out",
    "--language",
    "en-AU",
    "--format",
    "text",
  );
  expect(code).toBe(0);
  expect(err).not.toContain("language-");
  expect(readFileSync(join(folder, "out/handout.txt"), "utf8")).toContain("neutered female");
});
