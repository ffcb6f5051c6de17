import { appendFileSync, existsSync, mkdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { afterAll, afterEach, beforeAll, describe, expect, it, vi } from "vitest";
import { copyOfExamples, hearthsheet, stackTrace } from "../cli/hearthsheet.js";

// Each command is a process of its own.
vi.setConfig({ testTimeout: 300_000 });

const plan = "dog-cheek-abscess/plan.yaml";
const done = "templates/handout/done.hbs";
const words = "locales/en/handout.json";
let folder = "";
const run = (...args: string[]) => {
  const ran = hearthsheet(args, { cwd: folder });
  expect(ran.err).not.toMatch(stackTrace);
  return ran;
};
const build = (...more: string[]) =>
  run("build", plan, "--out", "out", "--format", "text", "--language", "en", "--today", "2026-03-02", ...more);
const check = () => run("check", plan, "--today", "2026-03-02");
const put = (name: string, text: string) => {
  const path = join(folder, "overrides", name);
  mkdirSync(dirname(path), { recursive: true });
  writeFileSync(path, text);
};
const record = () => JSON.parse(readFileSync(join(folder, "out/record.json"), "utf8"));
const page = () => readFileSync(join(folder, "out/handout.txt"), "utf8");

beforeAll(() => {
  folder = copyOfExamples();
});
afterEach(({ task }) => {
  if (!task.name.startsWith("words the page")) rmSync(join(folder, "overrides"), { recursive: true, force: true });
});
afterAll(() => rmSync(folder, { recursive: true }));

describe("a clinic's own folder, beside its profile", () => {
  it("is empty at first, and then nothing is said of it", () => {
    expect(build().code).toBe(0);
    expect(record()).not.toHaveProperty("overrides");
    expect(JSON.parse(run("about", "--json").out)).toMatchObject({ overrides: [] });
  });

  it("words the page, is listed in the record and told by about", () => {
    put(words, JSON.stringify({ ring: { title: "Who to ring at any hour" } }));
    put(done, '::section{#done}\n## {{say "handout:done.title"}}\n\n{{told reason}}\n');
    put(".DS_Store", "\0");
    put("templates/handout/done.hbs~", "an editor's copy");
    expect(build("--case", "kept").code).toBe(0);
    expect(page()).toContain("Who to ring at any hour");
    const sha256 = expect.stringMatching(/^[0-9a-f]{64}$/);
    const overrides = [
      { name: words, sha256, texts: ["handout:ring.title"] },
      { name: done, sha256 },
    ];
    expect(record().overrides).toEqual(overrides);
    expect(JSON.parse(run("about", "--json").out)).toMatchObject({ overrides });
    expect(run("about").out).toContain(`Templates and texts of your own: 2 (${words}, ${done})`);
  });

  it("is kept with the case: it is built again as it was, and what has changed since is told", () => {
    expect(run("verify", "kept").code).toBe(0);
    appendFileSync(join(folder, "overrides", done), "\n");
    put("templates/handout/sign.hbs", readFileSync("templates/handout/sign.hbs", "utf8"));
    rmSync(join(folder, "overrides", words));
    const { code, out } = run("verify", "kept");
    expect(code).toBe(1);
    expect(out).toContain("the same, byte for byte");
    expect(out).toMatch(/Edited since .*own, .*done\.hbs/);
    expect(out).toMatch(/Edited since .*own, .*sign\.hbs/);
    expect(out).toMatch(/No longer where it was: .*own, .*handout\.json/);
  });

  it("counts as read by the clinic in its language", () => {
    put("locales/es/handout.json", JSON.stringify({ ring: { title: "A quién llamar" } }));
    const read = run("languages", "--json", "--clinic", ".")
      .out.split("\n")
      .filter(Boolean)
      .map((line) => JSON.parse(line));
    expect(read.find(({ tag }) => tag === "es").reviewed.clinic).toBe(1);
  });

  it("stops a plan where it is wrong, with the place and the line", () => {
    put(done, "## {{patient.nmae}}");
    const { code, err } = check();
    expect(code).toBe(1);
    expect(err).toContain("overrides/templates/handout/done.hbs:1:14: stop[template-path-unknown]");
    expect(err).toContain("1 | ## {{patient.nmae}}");
    expect(run("about").out).toContain("Templates and texts of your own: not usable as they are.");
  });

  it("is what a new plan is tried with", () => {
    const rex = ["--name", "Rex", "--species", "dog", "--sex", "male", "--weight", "31 kg", "--owner", "Ada Roe"];
    const wound = ["--topic", "sutured-wound", "--site", "left thigh", "--language", "en"];
    const care = [...wound, "--today", "2026-03-02", "--discharged", "2026-03-02 16:30"];
    put("templates/handout/go-now.hbs", "");
    const { code, err, out } = run("new", "rex.yaml", ...rex, ...care);
    expect(err).toContain("go-now.hbs:1:1: stop[override-drops]");
    expect([code, out, existsSync(join(folder, "rex.yaml"))]).toEqual([1, "", false]);
    put("templates/handout/go-now.hbs", "## {{patient.nmae}}\n");
    expect(run("new", "rex.yaml", ...rex, ...care).err).toContain("go-now.hbs:1:14: stop[template-path-unknown]");
  });

  it("may leave out no sign: check tells it, and build writes nothing", () => {
    put("templates/handout/go-now.hbs", "");
    rmSync(join(folder, "out"), { recursive: true });
    for (const { code, err } of [check(), build()]) {
      expect(code).toBe(1);
      expect(err).toContain("go-now.hbs:1:1: stop[override-drops]");
    }
    expect(() => record()).toThrow();
  });

  it("asks why a text has other figures, and the record keeps the reason and the place", () => {
    put(words, JSON.stringify({ ring: { title: "Who to call, 24 hours" } }));
    expect(check().err).toContain("ask[override-figures]");
    expect(build().code).toBe(1);
    expect(build("--allow", "override-figures:en, handout:ring.title=we are open day and night").code).toBe(0);
    expect(record().problems).toContainEqual(
      expect.objectContaining({
        code: "override-figures",
        at: { in: `overrides/${words}`, line: 1, column: 18, length: 23 },
        reason: "we are open day and night",
      }),
    );
  });

  it("follows no link, and reads nothing that is too large", () => {
    put("templates/handout/ring.hbs", "x".repeat(2 ** 20 + 1));
    symlinkSync(join(folder, "clinic.yaml"), join(folder, "overrides", done));
    symlinkSync(folder, join(folder, "overrides/templates/letter"));
    const { code, err } = check();
    expect(code).toBe(1);
    expect(err.match(/stop\[override-unusable\]/g)).toHaveLength(3);
  });

  it("reads nothing that is no text", () => {
    put(done, "");
    writeFileSync(join(folder, "overrides", done), new Uint8Array([0x23, 0xff, 0xfe]));
    expect(check().err).toContain("is no text in UTF-8");
  });

  it("in a batch, each plan has its own clinic's", () => {
    mkdirSync(join(folder, "other"));
    for (const name of ["clinic.yaml", "prices.yaml"])
      writeFileSync(join(folder, "other", name), readFileSync(join(folder, name)));
    writeFileSync(
      join(folder, "other/plan.yaml"),
      readFileSync(join(folder, plan), "utf8").replace("../clinic.yaml", "clinic.yaml"),
    );
    put(words, JSON.stringify({ ring: { title: "Who to ring here" } }));
    const plans = [plan, "other/plan.yaml"];
    const { code } = run(
      "build",
      ...plans,
      "--out",
      "both",
      "--format",
      "text",
      "--language",
      "en",
      "--today",
      "2026-03-02",
      "--jobs",
      "2",
    );
    expect(code).toBe(0);
    const [here, there] = ["dog-cheek-abscess", "other"].map((name) =>
      readFileSync(join(folder, "both", name, "handout.txt"), "utf8"),
    );
    expect(here).toContain("Who to ring here");
    expect(there).not.toContain("Who to ring here");
  });
});
