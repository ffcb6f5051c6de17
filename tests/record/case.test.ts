import { spawn } from "node:child_process";
import { once } from "node:events";
import {
  appendFileSync,
  cpSync,
  existsSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { afterAll, beforeAll, describe, expect, it, vi } from "vitest";
import { readJournal } from "#journal/journal.js";
import { copyOfExamples, hearthsheet, main, stackTrace } from "../cli/hearthsheet.js";
import { smtpServer } from "../send/help.js";

// Each command is a process of its own.
vi.setConfig({ testTimeout: 300_000 });

const plan = "dog-cheek-abscess/plan.yaml";
let folder = "";
const made: string[] = [];
const run = (...args: string[]) => hearthsheet(args, { cwd: folder });
const build = (file: string, day: string, ...more: string[]) =>
  run("build", file, "--out", "out", "--case", "kept/rex", "--format", "html,ics,eml", "--today", day, ...more);
const journal = (name = "kept/rex") => readFileSync(join(folder, name, "journal.jsonl"), "utf8");
const entries = (name?: string) => readJournal("j", journal(name)).value ?? [];
/** A copy of the case to spoil. */
const spoil = (change: (path: string) => void) => {
  const copy = join(folder, `spoilt-${made.length}`);
  made.push(copy);
  cpSync(join(folder, "kept/rex"), copy, { recursive: true });
  change(copy);
  return copy;
};
const keptFile = (copy: string, ending: string) =>
  join(copy, "kept", readdirSync(join(copy, "kept")).find((name) => name.endsWith(ending)) ?? "");

beforeAll(() => {
  folder = copyOfExamples();
  expect(build(plan, "2026-03-02").err).not.toMatch(stackTrace);
  const entered = ["--at", "2026-03-03 09:30", "--visit", "change", "--decided", "continue", "--charged", "48.00"];
  expect(run("revise", plan, ...entered, "--case", "kept/rex", "--today", "2026-03-03").code).toBe(0);
  expect(build("dog-cheek-abscess/plan.r1.yaml", "2026-03-03").code).toBe(0);
});
afterAll(() => rmSync(folder, { recursive: true }));

describe("a case folder", () => {
  it("keeps each paper and visit, privately, and a paper built twice on a day once", () => {
    expect(entries().map(({ what, on, revision }) => [what, on, revision])).toEqual([
      ["built", "2026-03-02", 0],
      ["visited", "2026-03-03", 1],
      ["built", "2026-03-03", 1],
    ]);
    const before = journal();
    expect(build("dog-cheek-abscess/plan.r1.yaml", "2026-03-03").code).toBe(0);
    expect(journal()).toBe(before);
    expect(statSync(join(folder, "kept/rex")).mode & 0o777).toBe(0o700);
    for (const name of readdirSync(join(folder, "kept/rex"), { recursive: true, withFileTypes: true }))
      if (name.isFile()) expect(statSync(join(name.parentPath, name.name)).mode & 0o777).toBe(0o600);
  });

  it("tells what the owner had on any day, and hands out that very paper", () => {
    const on = (day: string) => JSON.parse(run("history", "kept/rex", "--on", day, "--json").out);
    expect(on("2026-03-02").paper.revision).toBe(0);
    expect(on("2026-03-09").paper.revision).toBe(1);
    const { paths } = on("2026-03-09");
    const html = paths.find(({ name }: { name: string }) => name === "handout.html");
    expect(readFileSync(join(folder, html.path))).toEqual(readFileSync(join(folder, "out/handout.html")));
    expect(run("history", "kept/rex", "--on", "2026-03-01").out).toContain("nothing had been made yet");
    expect(run("history", "kept/rex").out.split("\n").length).toBe(4);
    expect(run("history", "nowhere")).toMatchObject({ code: 2, out: "" });
  });

  it("is the same when it is built again", () => {
    const { code, out, err } = run("verify", "kept/rex");
    expect([code, out.match(/the same, byte for byte/g)?.length], out + err).toEqual([0, 2]);
  });

  it("notes to whom a letter went, and when: each once, and no more than that", async () => {
    const server = await smtpServer(() => "take");
    const send = async () => {
      const args = [
        "send",
        "out",
        "--yes",
        "--smtp",
        server.url,
        "--ledger",
        "state/sent.jsonl",
        "--case",
        "kept/sent",
      ];
      const child = spawn(process.execPath, [main, ...args], { cwd: folder, stdio: "ignore" });
      return (await once(child, "close"))[0];
    };
    cpSync(join(folder, "kept/rex"), join(folder, "kept/sent"), { recursive: true });
    expect([await send(), await send()]).toEqual([0, 0]);
    await server.close();
    const sent = entries("kept/sent").filter(({ what }) => what === "sent");
    expect(sent).toMatchObject([{ revision: 1, to: "lucia.ferrer@example.org", language: "es" }]);
    expect([...server.taken.values()].map((letters) => letters.length)).toEqual([1]);
    expect(run("history", "kept/sent").out).toContain("sent revision 1 to lucia.ferrer@example.org, in es");
    expect(run("history", "kept/sent", "--on", "2026-03-09").out).not.toContain("lucia.ferrer");
    const today = sent[0]?.on ?? "";
    expect(run("history", "kept/sent", "--on", today).out).toContain("sent revision 1 to lucia.ferrer@example.org");
  });

  it("keeps a proof as the clinic's own: it was never handed over", () => {
    const proof = ["--format", "text", "--out", "out-proof", "--today", "2026-03-02"];
    expect(run("build", plan, ...proof, "--case", "kept/proof", "--proof").code).toBe(0);
    const record = JSON.parse(readFileSync(join(folder, "out-proof/record.json"), "utf8"));
    const names = (list: { name: string }[]) => list.map(({ name }) => name);
    expect([names(record.files), names(record.forStaff)]).toEqual([["handout.txt"], ["proof.html", "proof.pdf"]]);
    expect(run("history", "kept/proof").out).not.toContain("proof");
    expect(run("history", "kept/proof", "--on", "2026-03-02").out).not.toContain("proof.pdf");
    expect(run("verify", "kept/proof").code).toBe(0);
    appendFileSync(keptFile(join(folder, "kept/proof"), ".pdf"), " ");
    expect(run("verify", "kept/proof").out).toContain("proof.pdf was changed by hand");
    // A build without one leaves no old proof beside it.
    expect(run("build", plan, ...proof).code).toBe(0);
    expect(readdirSync(join(folder, "out-proof")).sort()).toEqual(["handout.txt", "record.json"]);
  });

  it("takes no other case, and then nothing is handed out", () => {
    const cat = ["build", "cat-abscess-at-home/plan.yaml", "--format", "html", "--today", "2026-03-09"];
    const { code, err } = run(...cat, "--out", "cat", "--case", "kept/rex");
    expect([code === 0, err.includes("holds another case"), existsSync(join(folder, "cat"))]).toEqual([
      false,
      true,
      false,
    ]);
  });
});

describe("verify tells", () => {
  it.each<[string, (copy: string) => void, string]>([
    [
      "a kept page changed by hand",
      (copy) => appendFileSync(keptFile(copy, ".html"), " "),
      "handout.html was changed by hand",
    ],
    ["a kept plan changed by hand", (copy) => appendFileSync(keptFile(copy, ".yaml"), "\n"), "was changed by hand"],
    ["a kept file gone", (copy) => rmSync(keptFile(copy, ".ics")), "rechecks.ics was kept in the case and is gone"],
    [
      "a journal edited by hand",
      (copy) => {
        const path = join(copy, "journal.jsonl");
        writeFileSync(path, readFileSync(path, "utf8").replace('"revision":1', '"revision":2'));
      },
      "Line 2 of",
    ],
    ["a line cut short", (copy) => writeFileSync(join(copy, "journal.jsonl"), journal().slice(0, -9)), "Line 3 of"],
  ])("%s", (_, change, told) => {
    const { code, out, err } = run("verify", spoil(change));
    expect([code, (out + err).includes(told)], out + err).toEqual([1, true]);
    expect(err).not.toMatch(stackTrace);
  });

  it("a plan, a clinic profile and a price list that were edited since, and a plan that is gone", () => {
    const files = ["dog-cheek-abscess/plan.r1.yaml", "clinic.yaml", "prices.yaml"];
    const before = files.map((file) => readFileSync(join(folder, file)));
    for (const file of files) appendFileSync(join(folder, file), "# later\n");
    const edited = run("verify", "kept/rex");
    for (const what of ["the plan", "the clinic profile", "the price list"])
      expect(edited.out + edited.err).toContain(`Edited since the last paper was made: ${what}`);
    rmSync(join(folder, files[0] ?? ""));
    const gone = run("verify", "kept/rex");
    expect(gone.out + gone.err).toContain("No longer where it was: the plan");
    for (const [i, file] of files.entries()) writeFileSync(join(folder, file), before[i] ?? "");
    expect([edited.code, gone.code, run("verify", "kept/rex").code]).toEqual([1, 1, 0]);
  });

  it("a tool whose words and templates are others now, by their names", () => {
    const home = dirname(dirname(dirname(main)));
    const other = mkdtempSync(join(tmpdir(), "other-"));
    for (const part of ["dist", "templates", "locales", "shared", "fonts", "package.json"])
      cpSync(join(home, part), join(other, part), { recursive: true });
    symlinkSync(join(home, "node_modules"), join(other, "node_modules"));
    const words = join(other, "locales/es/changes.json");
    writeFileSync(words, readFileSync(words, "utf8").replace("Qué cambió", "Lo que cambió"));
    const { code, out, err } = hearthsheet(["verify", "kept/rex"], {
      cwd: folder,
      main: join(other, "dist/bin/hearthsheet.js"),
    });
    rmSync(other, { recursive: true });
    expect(code).toBe(1);
    // The first paper has no such words; the second has.
    expect(out).toMatch(/Revision 0 of .*: the same, byte for byte/);
    expect(out).toMatch(/Revision 1 of .* comes out otherwise now: .*handout\.html/);
    expect(err).toContain("Not the same as then: locales/es.");
  });
});

describe("nothing is lost", () => {
  it("when two build at once", async () => {
    const start = (language: string) => {
      const args = ["build", plan, "--out", `out-${language}`, "--case", "kept/two", "--format", "text", "--language"];
      return once(
        spawn(process.execPath, [main, ...args, language, "--today", "2026-03-02"], { cwd: folder }),
        "close",
      );
    };
    const codes = (await Promise.all(["en", "es"].map(start))).map(([code]) => code);
    expect(codes).toEqual([0, 0]);
    expect(entries("kept/two").map(({ what }) => what)).toEqual(["built", "built"]);
  });

  it("when it is killed at any moment", async () => {
    const args = ["build", plan, "--out", "out-kill", "--case", "kept/kill", "--format", "text,html"];
    for (const [i, wait] of [700, 1300, 1700, 2100, 2500].entries()) {
      const child = spawn(
        process.execPath,
        [main, ...args, "--today", `2026-03-0${i + 2}`, "--allow", "discharge-not-today=x"],
        {
          cwd: folder,
          stdio: "ignore",
        },
      );
      setTimeout(() => child.kill("SIGKILL"), wait);
      await once(child, "close");
      const text = existsSync(join(folder, "kept/kill/journal.jsonl")) ? journal("kept/kill") : "";
      expect(readJournal("j", text).problems).toEqual([]);
    }
    rmSync(join(folder, "kept/kill/.hearthsheet.lock"), { recursive: true, force: true });
    rmSync(join(folder, "out-kill/.hearthsheet.lock"), { recursive: true, force: true });
    expect(run(...args, "--today", "2026-03-02").code).toBe(0);
    const left = readdirSync(join(folder, "kept/kill"), { recursive: true }).filter((name) =>
      String(name).endsWith(".draft"),
    );
    expect([run("verify", "kept/kill").code, left]).toEqual([0, []]);
  });

  it("when the case folder cannot be written", () => {
    writeFileSync(join(folder, "a-file"), "");
    const { code, err } = run(
      "build",
      plan,
      "--out",
      "out-none",
      "--case",
      "a-file",
      "--format",
      "text",
      "--today",
      "2026-03-02",
    );
    expect([code, existsSync(join(folder, "out-none"))]).toEqual([2, false]);
    expect(err).toContain("cannot be used");
  });
});
