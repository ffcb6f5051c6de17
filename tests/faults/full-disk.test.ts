import { spawnSync } from "node:child_process";
import { existsSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { copyOfExamples, hearthsheet, main, stackTrace } from "../cli/hearthsheet.js";
import { type SmallDisk, smallDisk } from "./small-disk.js";

const plan = "dog-cheek-abscess/plan.yaml";
const on = (day: string) => ["--today", day];
const paper = ["--format", "html,text", ...on("2026-03-02")];
let folder = "";
beforeAll(() => {
  folder = copyOfExamples();
});
afterAll(() => rmSync(folder, { recursive: true }));

const run = (...args: string[]) => hearthsheet(args, { cwd: folder });
/** What lies in a folder, at any depth, but for the lock that one who was stopped leaves. */
const files = (path: string) =>
  readdirSync(path, { recursive: true, withFileTypes: true })
    .filter((one) => one.isFile())
    .map(({ name, parentPath }) => join(parentPath, name).slice(path.length + 1))
    .sort();

/** One command line that may write no file of more than so many kilobytes: what the system says then is EFBIG. */
function limited(kilobytes: number, ...args: string[]) {
  // In sh a block is of 512 octets (POSIX, ulimit -f).
  const script = `ulimit -f ${kilobytes * 2}; exec "$@"`;
  const node = [process.execPath, "--import", 'data:text/javascript,process.on("SIGXFSZ",()=>{})'];
  const command = ["-c", script, "limited", ...node, main, ...args];
  const env = { PATH: process.env["PATH"], XDG_STATE_HOME: join(folder, "state") };
  const { status, stderr } = spawnSync("sh", command, { cwd: folder, encoding: "utf8", env });
  return { code: status, err: stderr };
}

describe("a file that cannot be written whole", () => {
  it("leaves a package that was there as it was", () => {
    expect(run("build", plan, "--out", "out", ...paper).code).toBe(0);
    const before = files(join(folder, "out")).map((name) => [name, readFileSync(join(folder, "out", name), "latin1")]);
    const { code, err } = limited(8, "build", plan, "--out", "out", ...paper, "--large-print", "--language", "en");
    expect([code, err.includes("EFBIG")], err).toEqual([2, true]);
    expect(err).not.toMatch(stackTrace);
    expect(files(join(folder, "out")).map((name) => [name, readFileSync(join(folder, "out", name), "latin1")])).toEqual(
      before,
    );
  });

  it("is handed out by no build that keeps its case, and the case stays whole", () => {
    expect(run("build", plan, "--out", "kept-out", "--case", "kept", ...paper).code).toBe(0);
    const before = readFileSync(join(folder, "kept/journal.jsonl"), "utf8");
    const more = ["--out", "kept-more", "--case", "kept", "--format", "html,text", ...on("2026-03-03")];
    const { code, err } = limited(8, "build", plan, ...more, "--language", "en");
    expect([code, err.includes("kept cannot be used")], err).toEqual([2, true]);
    expect([existsSync(join(folder, "kept-more")), readFileSync(join(folder, "kept/journal.jsonl"), "utf8")]).toEqual([
      false,
      before,
    ]);
    expect(files(join(folder, "kept")).filter((name) => name.endsWith(".draft"))).toEqual([]);
    expect(run("verify", "kept").code).toBe(0);
    expect(run("build", plan, ...more, "--language", "en").code).toBe(0);
  });

  it("is no revision, and no plan", () => {
    const long = readFileSync(join(folder, plan), "utf8") + "# much\n".repeat(2000);
    writeFileSync(join(folder, "dog-cheek-abscess/long.yaml"), long);
    const visit = ["--at", "2026-03-03 09:30", "--visit", "change", "--decided", "continue", "--charged", "48.00"];
    const { code, err } = limited(8, "revise", "dog-cheek-abscess/long.yaml", ...visit, ...on("2026-03-03"));
    expect([code, err.includes("EFBIG")], err).toEqual([2, true]);
    expect(readdirSync(join(folder, "dog-cheek-abscess")).sort()).toEqual(["long.yaml", "plan.yaml"]);
    const asked = ["--name", "Rex", "--species", "dog", "--sex", "male", "--weight", "31 kg", "--owner", "Ama Okafor"];
    const rest = ["--language", "en", "--topic", "sutured-wound", "--site", "left thigh"];
    const made = limited(0, "new", "rex.yaml", ...asked, ...rest, ...on("2026-03-02"));
    expect([made.code, made.err.includes("EFBIG"), existsSync(join(folder, "rex.yaml"))], made.err).toEqual([
      2,
      true,
      false,
    ]);
  });
});

const first = smallDisk(64);
describe.runIf(first !== null)("a disk that is full", () => {
  const disk = first as SmallDisk;
  afterAll(() => disk.remove());

  it("is told, holds nothing half written, and is built on once there is room", () => {
    const out = join(disk.path, "out");
    const { code, err } = run("build", plan, "--out", out, "--format", "pdf,html,text,ics", ...on("2026-03-02"));
    expect([code, err.includes("out-full")], err).toEqual([2, true]);
    expect(files(disk.path)).toEqual([]);
    expect(run("build", plan, "--out", out, "--format", "text", ...on("2026-03-02")).code).toBe(0);
  });

  it("takes no part of a case", () => {
    const kept = join(disk.path, "kept");
    const { code, err } = run("build", plan, "--out", "none", "--case", kept, ...paper);
    expect([code, err.includes("ENOSPC"), existsSync(join(folder, "none"))], err).toEqual([2, true, false]);
    expect(files(kept).filter((name) => name.endsWith(".draft") || name === "journal.jsonl")).toEqual([]);
    rmSync(kept, { recursive: true });
    const here = readFileSync(join(folder, plan), "utf8").replace("../clinic.yaml", join(folder, "clinic.yaml"));
    writeFileSync(join(disk.path, "plan.yaml"), here);
    spawnSync("dd", ["if=/dev/zero", `of=${join(disk.path, "fill")}`, "bs=1k"]);
    const visit = ["--at", "2026-03-03 09:30", "--visit", "change", "--decided", "continue", "--charged", "48.00"];
    const revised = run("revise", join(disk.path, "plan.yaml"), ...visit, ...on("2026-03-03"));
    expect([revised.code, revised.err.includes("ENOSPC")], revised.err).toEqual([2, true]);
    expect(files(disk.path).filter((name) => name.includes("r1"))).toEqual([]);
  });
});
