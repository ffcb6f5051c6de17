import { spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import { chmodSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { parse } from "yaml";
import { copyOfExamples, hearthsheet, main, type Run, stackTrace } from "./hearthsheet.js";

let folder = "";
beforeEach(() => {
  folder = copyOfExamples();
});
afterEach(() => rmSync(folder, { recursive: true }));

const dog = "dog-cheek-abscess/plan.yaml";
const cat = "cat-abscess-at-home/plan.yaml";
const read = (path: string) => readFileSync(join(folder, path), "utf8");
const run = (args: string[], input?: string, env?: Record<string, string>): Run =>
  hearthsheet(args, { cwd: folder, ...(input === undefined ? {} : { input }), ...(env ? { env } : {}) });
const jsonLines = (text: string) =>
  text
    .trim()
    .split("\n")
    .map((line) => JSON.parse(line));
const asJsonLine = (path: string, change = (text: string) => text) =>
  JSON.stringify({ ...parse(change(read(path)), { schema: "failsafe" }), clinic: "clinic.yaml" });

/** Rewrites the dog's plan; a change that changes nothing tests nothing. */
function rewrite(from: string, to: string): void {
  const text = read(dog);
  if (!text.includes(from)) throw new Error(`the example no longer holds ${from}`);
  writeFileSync(join(folder, dog), text.replace(from, to));
}
const lineOf = (words: string) =>
  read(dog)
    .split("\n")
    .findIndex((line) => line.includes(words)) + 1;

describe("what is in the way is told with its place, and nothing is overwritten", () => {
  it("a logo of 30 MB", () => {
    writeFileSync(join(folder, "logo.png"), Buffer.alloc(30 * 1024 * 1024));
    writeFileSync(join(folder, "clinic.yaml"), `logo: logo.png\n${read("clinic.yaml")}`);
    const { code, err } = run(["build", dog, "--out", "out", "--format", "eml"]);
    expect(err).toMatch(/^clinic\.yaml:1:7: stop\[logo-too-large\]/m);
    expect([code, readdirSync(folder).includes("out")]).toEqual([1, false]);
  });

  it.each([
    ["a missing unit", "24.6 kg", "24.6", "unit-missing", "24.6,"],
    ["an unknown topic", "open-wound-clinic-bandage", "open-wound-clinc-bandage", "topic-unknown", "open-wound-clinc"],
    ["a misspelt field", "clinician:", "clinican:", "field-unknown", "clinican:"],
    ["a date in the past", "2026-03-03 09:30", "2026-02-27 09:30", "date-past", "2026-02-27"],
    ["a visit on a closed day", "2026-03-05 09:30", "2026-03-08 09:30", "closed-day", "2026-03-08"],
    ["a day that is none", "2026-03-05 09:30", "2026-02-30 09:30", "date-unreadable", "2026-02-30"],
    ["YAML that is none", "patient: {", "patient: [", "yaml-syntax", "patient: ["],
    ["a clinic profile that is not there", "../clinic.yaml", "../clinc.yaml", "clinic-not-found", "../clinc.yaml"],
  ])("%s", (_, from, to, code, words) => {
    rewrite(from, to);
    mkdirSync(join(folder, "out"));
    writeFileSync(join(folder, "out/handout.pdf"), "before");
    const { code: exit, out, err } = run(["build", dog, "--out", "out"]);
    const found = err.split("\n").find((line) => line.includes(`[${code}]`)) ?? `nothing of ${code} in\n${err}`;
    expect(found).toMatch(new RegExp(`^${dog}:${lineOf(words)}:\\d+: stop\\[`));
    expect(err).toMatch(/\n +\d+ \| .+\n +\| +\^+\n/);
    expect(err).not.toMatch(stackTrace);
    expect(exit).toBe(code === "clinic-not-found" ? 2 : 1);
    expect(out).toBe("");
    expect(readdirSync(join(folder, "out"))).toEqual(["handout.pdf"]);
    expect(read("out/handout.pdf")).toBe("before");
    expect(run(["check", dog])).toMatchObject({ code: exit });
  });

  it("a clinic profile that is not there can be made, and a folder is named without a sign too many", () => {
    rewrite("../clinic.yaml", "../clinc.yaml");
    expect(run(["check", dog]).err).toContain("hearthsheet new clinic");
    expect(run(["check", `${dirname(dog)}/`]).err).toContain(`Name the file in it: ${dog}\n`);
  });

  it("amounts are told in the plural, and a reason is given for them as the plan writes them", () => {
    rewrite("    for: 7 days\n", "    for: 7 days\n    dispense: 60 tablets\n");
    const { err } = run(["check", dog]);
    expect(err).toContain("60 tablets to take home, and only 14 tablets needed");
    expect(err).toContain('for: "amoxicillin-clavulanate, 60 tablet"');
  });

  it("marks the exact words", () => {
    rewrite("24.6 kg", "24.6");
    const [line = "", carets = ""] = run(["check", dog]).err.split("\n").slice(1);
    expect(line.slice(carets.indexOf("^"), carets.lastIndexOf("^") + 1)).toBe("24.6");
  });

  it("tells all problems at once, of the plan and of the clinic profile, each file in its order", () => {
    rewrite("24.6 kg", "24.6");
    rewrite("clinician:", "clinican:");
    writeFileSync(join(folder, "clinic.yaml"), read("clinic.yaml").replace("20 min", "20"));
    const heads = run(["check", dog])
      .err.split("\n")
      .filter((line) => /: (stop|ask|note)\[/.test(line));
    const found = heads.map((line) => line.replace(/^(.+?):(\d+):\d+: \w+\[([a-z-]+)\].*$/, "$1 $2 $3"));
    expect(found).toEqual([
      `${dog} ${lineOf("clinican")} field-unknown`,
      `${dog} ${lineOf("24.6,")} unit-missing`,
      `clinic.yaml ${read("clinic.yaml").split("\n").indexOf("visit: 20") + 1} unit-missing`,
    ]);
  });

  it("tells of each file that cannot be read, and goes on with the next", () => {
    writeFileSync(join(folder, "large.yaml"), Buffer.alloc(5 * 1024 * 1024, "a"));
    writeFileSync(join(folder, "binary.yaml"), Buffer.from([0x25, 0x50, 0x44, 0x46, 0, 255, 254]));
    writeFileSync(join(folder, "empty.yaml"), "");
    mkdirSync(join(folder, "folder.yaml"));
    const files = ["large.yaml", "binary.yaml", "empty.yaml", "missing.yaml", "folder.yaml"];
    const { code, out, err } = run(["check", ...files, cat]);
    const told = err.match(/^\w+\.yaml:1:1: stop\[[a-z-]+\](?=: .+\n +[=|] .+)/gm);
    expect(told).toEqual([
      "large.yaml:1:1: stop[file-too-large]",
      "binary.yaml:1:1: stop[file-not-text]",
      "empty.yaml:1:1: stop[file-empty]",
      "missing.yaml:1:1: stop[file-not-found]",
      "folder.yaml:1:1: stop[file-is-folder]",
    ]);
    expect(err).not.toMatch(stackTrace);
    expect(out.match(/^[^:]+/gm)).toEqual([...files, cat]);
    expect(code).toBe(2);
  });

  it("prints a name as it is, and no terminal obeys it", () => {
    rewrite("species: dog", 'species: "\\e[31mdog\\u202e"');
    const { err, code } = run(["check", dog]);
    // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what must not be printed
    expect(err).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u202e]/);
    expect(code).toBe(1);
  });
});

describe("bad usage", () => {
  it.each([
    [["bild", dog], "unknown command 'bild'"],
    [["check"], "missing required argument"],
    [["check", dog, "--jsno"], "--json"],
    [["check", "-", dog], "alone"],
    [["build", dog], "--out"],
    [["build", dog, "--out", "out", "--format", "pdf,docx"], "pdf, html, text, ics"],
    [["build", dog, "--out", "out", "--paper", "a5"], "letter, a4"],
    [["build", dog, "--out", "out", "--language", "not a tag"], "hearthsheet languages"],
    [["build", dog, "--out", "out", "--language", "tlh"], "en-GB"],
    [["check", dog, "--today", "2026-02-30"], "2026-03-04"],
    [["check", dog, "--allow", "discharge-not-today"], "reason"],
    [["check", dog, "--allow", "discharge-not-tody=late"], "discharge-not-today"],
  ])("%j", (args, told) => {
    const { code, out, err } = run(args);
    expect(err).toContain(told);
    expect(err).not.toMatch(stackTrace);
    expect([code, out]).toEqual([2, ""]);
    expect(readdirSync(folder)).not.toContain("out");
  });
});

describe("JSON Lines on standard input", () => {
  const lines = () => [
    asJsonLine(dog),
    asJsonLine(cat, (text) => text.replace("4.2 kg", "4.2")),
    "",
    '{"format": [}',
    asJsonLine(cat),
  ];

  it("tells each problem in its line of the stream, and goes on", () => {
    const { code, out, err } = run(["check", "-"], lines().join("\n"));
    expect(err).toMatch(/^-:2:\d+: stop\[unit-missing\]/m);
    expect(err).toMatch(/^-:4:13: stop\[yaml-syntax\]/m);
    expect(err).not.toMatch(/^-:[135]:\d+: stop/m);
    expect(err).not.toMatch(stackTrace);
    expect(out.match(/^-:\d+/gm)).toEqual(["-:1", "-:2", "-:4", "-:5"]);
    expect(code).toBe(1);
  });

  it("marks the exact words of a long line", () => {
    const { err } = run(["check", "-"], `\n${lines()[1]}\n`);
    const shown = err.split("\n");
    const at = shown.findIndex((line) => line.includes("stop[unit-missing]"));
    const [line = "", carets = ""] = shown.slice(at + 1);
    expect(line.slice(carets.indexOf("^"), carets.lastIndexOf("^") + 1)).toBe("4.2");
  });

  it("builds the good ones, each in a folder of its line", () => {
    const { code } = run(["build", "-", "--out", "out", "--format", "text"], lines().join("\n"));
    expect(readdirSync(join(folder, "out")).sort()).toEqual(["line-1", "line-5"]);
    expect(code).toBe(1);
  });

  it("has nothing to say of an empty stream", () => {
    expect(run(["check", "-"], "\n")).toEqual({ code: 0, out: "", err: "" });
  });
});

describe("build", () => {
  const all = ["handout.html", "handout.pdf", "handout.txt", "rechecks.ics", "record.json"];
  const modeOf = (path: string) => statSync(join(folder, path)).mode & 0o777;

  it("writes the package of one plan straight into the folder, for its owner alone, and names each file", () => {
    const { code, out } = run(["build", dog, "--out", "out/today"]);
    expect(code).toBe(0);
    expect(readdirSync(join(folder, "out/today")).sort()).toEqual(all);
    expect(out.trim().split("\n").sort()).toEqual(all.map((name) => `out/today/${name}`));
    expect(all.map((name) => modeOf(`out/today/${name}`))).toEqual(all.map(() => 0o600));
    expect([modeOf("out"), modeOf("out/today")]).toEqual([0o700, 0o700]);
  });

  it("gives the same bytes twice, anywhere and at any time", () => {
    run(["build", dog, "--out", "one", "--today", "2026-03-02"]);
    hearthsheet(["build", dog, "--out", "two", "--today", "2026-03-02"], {
      cwd: folder,
      env: { TZ: "Asia/Tokyo", LANG: "es_MX.UTF-8" },
    });
    const hashes = (out: string) =>
      all.map((name) =>
        createHash("sha256")
          .update(readFileSync(join(folder, out, name)))
          .digest("hex"),
      );
    expect(hashes("two")).toEqual(hashes("one"));
  });

  it("gives each plan its folder, and each language its own below", () => {
    const { code } = run([
      "build",
      dog,
      cat,
      "--out",
      "out",
      "--language",
      "en",
      "--language",
      "es",
      "--format",
      "text,ics",
    ]);
    expect(code).toBe(0);
    const found = readdirSync(join(folder, "out"), { recursive: true, withFileTypes: true }).filter((entry) =>
      entry.isFile(),
    );
    expect(found.length).toBe(2 * (2 * 2 + 1));
    expect(read("out/dog-cheek-abscess/es/handout.txt")).toContain("Bramble");
    expect(read("out/cat-abscess-at-home/en/handout.txt")).toContain("Clementine");
  });

  it("builds one plan though another is stopped", () => {
    rewrite("24.6 kg", "24.6");
    const { code } = run(["build", dog, cat, "--out", "out", "--format", "text"]);
    expect(readdirSync(join(folder, "out"))).toEqual(["cat-abscess-at-home"]);
    expect(code).toBe(1);
  });

  it("asks for a reason, takes it, and keeps it in the record", () => {
    rewrite("  - { problem: discharge-not-today, reason: A worked example with a fixed date. }", "  []");
    rewrite("allow:\n  []", "allow: []");
    expect(run(["build", dog, "--out", "out"])).toMatchObject({ code: 1, out: "" });
    expect(run(["build", dog, "--out", "out", "--allow", "discharge-not-today=A reprint"])).toMatchObject({ code: 0 });
    expect(read("out/record.json")).toContain("A reprint");
    expect(run(["build", dog, "--out", "again", "--today", "2026-03-02"])).toMatchObject({ code: 0 });
  });

  it("tells a folder that is a file, and leaves the file", () => {
    writeFileSync(join(folder, "out"), "mine");
    const { code, err } = run(["build", dog, "--out", "out"]);
    expect(err).toContain("stop[out-not-folder]");
    expect([code, read("out")]).toEqual([2, "mine"]);
  });

  it("tells a folder it may not write into", () => {
    mkdirSync(join(folder, "out"), { mode: 0o555 });
    chmodSync(folder, 0o755);
    const root = process.getuid?.() === 0;
    const { code, err } = hearthsheet(["build", dog, "--out", "out"], { cwd: folder, ...(root ? { uid: 65534 } : {}) });
    expect(err).toContain("stop[out-forbidden]");
    expect(err).not.toMatch(stackTrace);
    expect([code, readdirSync(join(folder, "out"))]).toEqual([2, []]);
  });
});

describe("what is printed where", () => {
  it("keeps problems to standard error and results to standard output, both JSON Lines with --json", () => {
    rewrite("24.6 kg", "24.6");
    const { out, err } = run(["check", dog, cat, "--json"]);
    expect(jsonLines(out)).toMatchObject([
      { plan: dog, ready: false, stop: 1 },
      { plan: cat, ready: true, stop: 0 },
    ]);
    const problems = jsonLines(err);
    expect(problems.find(({ code }) => code === "unit-missing")).toMatchObject({
      plan: dog,
      file: dog,
      line: lineOf("24.6,"),
      length: 4,
      severity: "stop",
      values: { given: "24.6" },
      what: expect.stringMatching(/./),
      hint: expect.stringMatching(/./),
    });
    const built = jsonLines(run(["build", cat, "--out", "out", "--format", "text", "--json"]).out);
    expect(built).toMatchObject([{ plan: cat, ready: true, written: ["out/handout.txt", "out/record.json"] }]);
  });

  it("speaks the staff's language where the profile says it, also of a profile with problems", () => {
    rewrite("24.6 kg", "24.6");
    const english = run(["check", dog]).err;
    writeFileSync(
      join(folder, "clinic.yaml"),
      read("clinic.yaml").replace("language: en", "language: es").replace("20 min", "20"),
    );
    const spanish = run(["check", dog]).out;
    expect(spanish).toContain("no está listo");
    expect(english).not.toContain("listo");
  });

  it("has no colour where there is no terminal", () => {
    rewrite("24.6 kg", "24.6");
    const { code, err } = run(["check", dog], "", { TERM: "xterm-256color" });
    expect(err).not.toContain("\u001b");
    expect(code).toBe(1);
  });

  it("names no owner", () => {
    const { code, out, err } = run(["build", dog, cat, "--out", "out", "--format", "text"]);
    expect(code).toBe(0);
    expect(out + err).not.toMatch(/Ferrer|Whitlow|example\.org/);
  });

  it("goes on quietly when nobody listens any more", () => {
    const shell = spawnSync("bash", ["-c", `"${process.execPath}" "${main}" schema | true; echo "\${PIPESTATUS[0]}"`], {
      encoding: "utf8",
    });
    expect(shell).toMatchObject({ stdout: "0\n", stderr: "" });
  });
});

describe("what there is to choose from", () => {
  it("lists topics, languages and the schema", () => {
    expect(run(["topics"]).out).toMatch(/^open-wound-clinic-bandage\t.*dog/m);
    expect(jsonLines(run(["topics", "--json", "--language", "es"]).out).length).toBeGreaterThan(1);
    const languages = jsonLines(run(["languages", "--json"]).out);
    expect(languages).toEqual(
      expect.arrayContaining([
        expect.objectContaining({ tag: "en", name: "English", state: "original" }),
        expect.objectContaining({ tag: "en-GB", state: "original", wrong: 0 }),
        expect.objectContaining({ tag: "es", name: "español" }),
      ]),
    );
    expect(JSON.parse(run(["schema"]).out)).toMatchObject({ type: "object", properties: { care: { type: "array" } } });
  });

  it.each([[["--help"]], [["help", "build"]], [["check", "--help"]], [["--version"]]])(
    "%j goes to standard output",
    (args) => {
      const { code, out, err } = run(args);
      expect([code, err]).toEqual([0, ""]);
      expect(out.trim()).not.toBe("");
      for (const line of out.split("\n")) expect(line.length).toBeLessThanOrEqual(88);
    },
  );
});

it("check --reading measures the page by its language's formulas and offers plain words for the clinician's own", () => {
  rewrite("Un absceso grande, una bolsa de pus, en", "Un absceso grande en");
  const { code, out, err } = run(["check", "--reading", dog, "--today", "2026-03-02"]);
  expect([code, out]).toEqual([0, expect.stringMatching(/reads in es at [89]\d\.\d \(szigriszt-pazos\)/)]);
  const column = read(dog).split("\n")[lineOf("absceso") - 1]?.indexOf("absceso") ?? -1;
  expect(err).toContain(`${dog}:${lineOf("absceso")}:${column + 1}: note[word-hard]`);
  expect(err).toMatch(/absceso[\s\S]+bolsa de pus/);
  const [page] = jsonLines(run(["check", "--reading", "--json", cat, "--today", "2026-03-05"]).out).slice(1);
  expect(page.reading).toMatchObject({ language: "en", scores: [{ measure: "flesch-kincaid", within: true }] });
});
