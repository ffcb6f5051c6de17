import { spawn, spawnSync } from "node:child_process";
import { once } from "node:events";
import { existsSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { parse } from "yaml";
import { readJournal } from "#journal/journal.js";
import { down, drive, enter, type Step, typed } from "../cli/drive.js";
import { copyOfExamples, hearthsheet, main, stackTrace } from "../cli/hearthsheet.js";

const plan = "dog-cheek-abscess/plan.yaml";
const next = "dog-cheek-abscess/plan.r1.yaml";
let folder = "";
beforeEach(() => {
  folder = copyOfExamples();
});
afterEach(() => rmSync(folder, { recursive: true }));

const run = (...args: string[]) => hearthsheet(args, { cwd: folder });
const read = (path: string) => parse(readFileSync(join(folder, path), "utf8"), { schema: "failsafe" });
const today = ["--today", "2026-03-03"];
const visited = ["--at", "2026-03-03 09:30", "--visit", "change", "--decided", "continue", "--charged", "48.00"];

describe("what was entered", () => {
  const entered = { at: "2026-03-03 09:30", visit: ["change"], decided: "continue", charged: "48.00", paid: "48.00" };

  it.each([
    ["a file of YAML", "at: 2026-03-03 09:30\nvisit: [change]\ndecided: continue\ncharged: 48.00\npaid: 48.00\n"],
    ["a file of JSON", JSON.stringify(entered)],
  ])("comes from %s, and is the same as by flags", (_, text) => {
    writeFileSync(join(folder, "visit.yaml"), text);
    expect(run("revise", plan, "--from", "visit.yaml", ...today)).toMatchObject({ code: 0, out: `${next}\n` });
    const [byFile] = [readFileSync(join(folder, next))];
    rmSync(join(folder, next));
    const piped = hearthsheet(["revise", plan, "--from", "-", ...today], { cwd: folder, input: text });
    expect(piped.code).toBe(0);
    expect(readFileSync(join(folder, next))).toEqual(byFile);
    rmSync(join(folder, next));
    expect(run("revise", plan, ...visited, "--paid", "48.00", ...today).code).toBe(0);
    expect(readFileSync(join(folder, next))).toEqual(byFile);
  });

  it("by a flag goes before the file's", () => {
    writeFileSync(join(folder, "visit.yaml"), JSON.stringify({ ...entered, decided: "stop" }));
    run("revise", plan, "--from", "visit.yaml", "--decided", "stretch", "--every", "3", ...today);
    expect(read(next).done).toMatchObject([{ decided: "stretch" }]);
  });

  it.each([
    ["no file", ["--from", "nowhere.yaml"], "There is no file nowhere.yaml", 2],
    ["no field of a visit", ["--from", "visit.yaml"], "visit.yaml:2:1: stop[field-unknown]", 1],
    [
      "a medicine that cannot be read",
      [...visited, "--medicine", "gabapentin, capsule 100 mg, evry 8 h"],
      "evry 8 h",
      1,
    ],
    ["a count that is none", [...visited, "--left", "carprofen=three"], "plan.r1.yaml", 1],
    ["nothing at all", [], "field-missing", 1],
  ])("that is %s is told, and nothing is written", (_, args, told, exit) => {
    writeFileSync(join(folder, "visit.yaml"), "at: 2026-03-03 09:30\nvisits: [change]\ndecided: continue\n");
    const { code, err, out } = run("revise", plan, ...args, ...today);
    expect([code, out, err.includes(told)], err).toEqual([exit, "", true]);
    expect(err).not.toMatch(stackTrace);
    expect(existsSync(join(folder, next))).toBe(false);
  });

  it("begins, changes and stops medicines", () => {
    const gabapentin = "gabapentin, capsule 100 mg, give 1 capsule, every 12 h, for 3 days, last given 09:00";
    const args = ["--medicine", gabapentin, "--medicine", "carprofen, for 2 days", "--stop", "amoxicillin-clavulanate"];
    const { code, err } = run("revise", plan, ...visited, ...args, ...today);
    expect(code, err).toBe(0);
    expect(read(next).medicines.map(({ name, for: days }: { name: string; for: string }) => [name, days])).toEqual([
      ["carprofen", "2 days"],
      ["gabapentin", "3 days"],
    ]);
  });

  it("that changes a medicine lets go of what went home and when it was to end, but for what is said anew", () => {
    const path = join(folder, plan);
    const before = "until: 2026-03-06\n    dispense: 4 tablets";
    writeFileSync(path, readFileSync(path, "utf8").replace("for: 4 days", `for: 4 days\n    ${before}`));
    const changed = (medicine: string) => {
      const { code, err } = run("revise", plan, ...visited, "--medicine", medicine, ...today);
      expect(code, err).toBe(0);
      const { medicines } = read(next);
      rmSync(join(folder, next));
      return medicines.find(({ name }: { name: string }) => name === "carprofen");
    };
    const longer = changed("carprofen, for 2 days");
    expect([longer.for, longer.until, longer.dispense]).toEqual(["2 days", undefined, undefined]);
    const said = changed("carprofen, for 2 days, until 2026-03-05, dispense 2 tablets");
    expect([said.for, said.until, said.dispense]).toEqual(["2 days", "2026-03-05", "2 tablets"]);
  });

  it("with a reason for what does not fit keeps the reason in the plan", () => {
    const heavier = [...visited, "--weight", "29 kg", ...today];
    const refused = run("revise", plan, ...heavier);
    expect([refused.code, existsSync(join(folder, next))]).toEqual([1, false]);
    expect(run("revise", plan, ...heavier, "--allow", "revise-weight-changed=The scales were off").code).toBe(0);
    expect(read(next).allow).toContainEqual({ problem: "revise-weight-changed", reason: "The scales were off" });
  });
});

describe("on a terminal", () => {
  const up = (times: number) => Array.from({ length: times }, () => down);
  const steps: Step[] = [
    ["When was the visit", typed("2026-03-01 09:30")],
    ["Correct at", ["\u0015", ...typed("2026-03-03 09:30")]],
    ["What was it for", typed("chnge")],
    ["chnge", ["\u0015", ...typed("change")]],
    ["Discharge", [down, enter]],
    ["Color of", [" ", enter]],
    ["Smell", [enter]],
    ["Bandage", [down, enter]],
    ["Pain", [enter]],
    ["What was done", typed("flushed, packed again")],
    ["What was decided", [...up(1), enter]],
    ["How many days", typed("3")],
    ["Weight", typed("29 kg")],
    ["Counted at home", typed("carprofen=2 tablets")],
    ["Medicines to stop", [" ", enter]],
    ["begin or change", [enter]],
    ["Charged for", typed("48.00")],
    ["Paid today", typed("20.00")],
    ["Your reason", typed("The scales were off")],
  ];

  it.each([[40], [100]])("asks, lets nothing pass that stops the plan, and writes it: %i columns", (columns) => {
    const unbooked = readFileSync(join(folder, plan), "utf8").replace(/^booked:\n( +- .*\n)+/m, "");
    writeFileSync(join(folder, plan), unbooked);
    const { code, colours, shown, stderr } = drive(steps, ["revise", plan, ...today], {
      ...{ cwd: folder, columns, env: { NO_COLOR: "1" } },
    });
    expect({ code, colours, stderr }, shown).toEqual({ code: 0, colours: [], stderr: "" });
    const { done, medicines, estimate, allow } = read(next);
    expect(done).toEqual([
      {
        at: "2026-03-03 09:30",
        visit: ["change"],
        seen: { discharge: "little", tissue: ["pink"], smell: "none", bandage: "damp", pain: "none" },
        did: ["flushed", "packed again"],
        decided: "stretch",
        weight: "29 kg",
        paid: "20.00",
      },
    ]);
    expect(medicines).toMatchObject([{ name: "carprofen", left: "2 tablets" }]);
    expect(estimate.paid).toBe("170.00");
    expect(allow.at(-1)).toMatchObject({ problem: "revise-weight-changed", reason: "The scales were off" });
    expect(run("check", next, "--json", ...today).err).not.toContain('"severity":"stop"');
  });

  it("asks after a closure what follows, and what the paper is to say", () => {
    const closing = readFileSync(join(folder, plan), "utf8")
      .replace(/^booked:\n( +- .*\n)+/m, "")
      .replace("maybe closure day 7-14", "maybe closure day 1-14");
    writeFileSync(join(folder, plan), closing);
    const closed: Step[] = [
      ["When was the visit", typed("2026-03-03 09:30")],
      ["What was it for", typed("closure")],
      ...["Discharge", "Color of", "Smell", "Bandage", "Pain", "What was done"].map((asked): Step => [asked, [enter]]),
      ["What was decided", [down, down, enter]],
      ["why we saw the patient", typed("The wound is closed.")],
      ["visits that follow", typed("sutures out day 10-14; recheck day 3")],
      ["Until when the collar", typed("sutures out")],
      ...["Weight", "Counted at home", "Medicines to stop", "begin or change"].map((asked): Step => [asked, [enter]]),
      ["Charged for", typed("290.00")],
      ["Paid today", [enter]],
    ];
    const { code, shown } = drive(closed, ["revise", plan, ...today], { cwd: folder, columns: 80 });
    expect(code, shown).toBe(0);
    const { care, collar, reason } = read(next);
    expect(care).toEqual([
      { topic: "delayed-closure", site: "left cheek", course: ["sutures out day 10-14", "recheck day 3"] },
    ]);
    expect([collar.until, reason]).toEqual(["sutures out", "The wound is closed."]);
  });

  it("is broken off without a trace", () => {
    const broken: Step[] = [...steps.slice(0, 1), ["Correct at", ["\u0003"]]];
    const { code, shown } = drive(broken, ["revise", plan, ...today], { cwd: folder, columns: 60 });
    expect([code, readdirSync(join(folder, "dog-cheek-abscess")).sort()], shown).toEqual([2, ["plan.yaml"]]);
    expect(shown).toContain("Nothing was written");
  });

  it("is asked nothing where the plan cannot be read", () => {
    writeFileSync(join(folder, plan), "format: hearthsheet/1\n");
    const { code, shown } = drive([], ["revise", plan, ...today], { cwd: folder, columns: 60 });
    expect([code, shown.includes("field-missing"), shown.includes("When was")]).toEqual([1, true, false]);
  });
});

describe("the next revision is written once, whole, or not at all", () => {
  const args = [main, "revise", plan, ...visited, ...today, "--case", "kept"];
  const entries = () => readJournal("j", readFileSync(join(folder, "kept/journal.jsonl"), "utf8"));

  it("when two enter the same visit at once", async () => {
    const start = () => once(spawn(process.execPath, args, { cwd: folder, stdio: "ignore" }), "close");
    const codes = (await Promise.all([start(), start(), start()])).map(([code]) => code).sort();
    expect(codes).toEqual([0, 2, 2]);
    expect(entries().value?.map(({ what, revision }) => [what, revision])).toEqual([["visited", 1]]);
    expect(readdirSync(join(folder, "dog-cheek-abscess")).sort()).toEqual(["plan.r1.yaml", "plan.yaml"]);
  });

  it("when it is killed at any moment", async () => {
    const before = readFileSync(join(folder, plan));
    expect(run(...args.slice(1)).code).toBe(0);
    const whole = readFileSync(join(folder, next));
    const rounds = Number(process.env["HEARTHSHEET_KILLS"] ?? 4);
    for (let round = 0; round < rounds; round++) {
      for (const path of [next, "kept"]) rmSync(join(folder, path), { recursive: true, force: true });
      const child = spawn(process.execPath, args, { cwd: folder, stdio: "ignore" });
      setTimeout(() => child.kill("SIGKILL"), 300 + (900 / rounds) * round);
      await once(child, "close");
      if (existsSync(join(folder, next))) expect(readFileSync(join(folder, next))).toEqual(whole);
      expect(readFileSync(join(folder, plan))).toEqual(before);
      if (existsSync(join(folder, "kept/journal.jsonl"))) expect(entries().problems).toEqual([]);
    }
    rmSync(join(folder, "kept/.hearthsheet.lock"), { recursive: true, force: true });
    expect([0, 2]).toContain(run(...args.slice(1)).code);
    expect(readFileSync(join(folder, next))).toEqual(whole);
  });

  it.runIf(process.getuid?.() === 0)("in a folder that cannot be written in", () => {
    const readOnly = join(folder, "read-only");
    spawnSync("cp", ["-r", join(folder, "dog-cheek-abscess"), readOnly]);
    spawnSync("chmod", ["-R", "a-w,a+rX", readOnly]);
    spawnSync("chmod", ["a+rx", folder]);
    const { code, err } = hearthsheet(["revise", "read-only/plan.yaml", ...visited, ...today], {
      ...{ cwd: folder, uid: 65534 },
    });
    expect([code, err.includes("EACCES")], err).toEqual([2, true]);
    expect(err).not.toMatch(stackTrace);
  });
});
