import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, utimesSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, expect, it } from "vitest";
import { copyOfExamples, hearthsheet, stackTrace } from "../cli/hearthsheet.js";

const plan = "dog-cheek-abscess/plan.yaml";
const visit = ["--at", "2026-03-03 09:30", "--visit", "change", "--decided", "continue", "--charged", "48.00"];
let folder = "";
beforeAll(() => {
  folder = copyOfExamples();
  const path = join(folder, plan);
  const allowed = "allow:\n  - { problem: discharge-not-today, reason: A worked example with a fixed date. }";
  const text = readFileSync(path, "utf8");
  expect(text).toContain(allowed);
  writeFileSync(path, text.replace(allowed, "allow: []"));
});
afterAll(() => rmSync(folder, { recursive: true }));

/** What a process is told the time is; it goes on from there. The methods of a date stay the real ones. */
const clockOf = (instant: string) =>
  `data:text/javascript,${encodeURIComponent(`
    const [real, off] = [Date, Date.parse("${instant}") - Date.now()];
    const now = () => real.now() + off;
    globalThis.Date = new Proxy(real, {
      construct: (target, args, made) => Reflect.construct(target, args.length > 0 ? args : [now()], made),
      get: (target, key) => (key === "now" ? now : target[key]),
    });`)}`;
const at = (instant: string, args: readonly string[], zone = "Pacific/Apia") =>
  hearthsheet(args, { cwd: folder, env: { TZ: zone, NODE_OPTIONS: `--import=${clockOf(instant)}` } });

it.each([
  ["1970-01-02T00:00:05Z", "January 1, 1970", "Pacific/Midway"],
  ["2025-03-02T20:00:00Z", "March 3, 2025", "Pacific/Apia"],
  ["2038-01-19T03:14:08Z", "January 19, 2038", "Asia/Kathmandu"],
  ["2106-02-07T06:28:16Z", "February 7, 2106", "America/Chicago"],
])("a clock that says %s is told, and nothing is written", (instant, today, zone) => {
  const built = at(instant, ["build", plan, "--out", "wrong", "--case", "wrong-case"], zone);
  expect(built.err).toContain(`This plan is for March 2, 2026, and today is ${today}.`);
  expect(built.err).toContain("this machine's clock");
  expect(built.err).not.toMatch(stackTrace);
  expect([built.code, built.out]).toEqual([1, ""]);
  expect([existsSync(join(folder, "wrong")), existsSync(join(folder, "wrong-case"))]).toEqual([false, false]);
  expect(readdirSync(join(folder, "dog-cheek-abscess"))).toEqual(["plan.yaml"]);
});

it("a clock that is put right builds it, and what was built is the same whatever the clock says later", () => {
  const build = ["build", plan, "--out", "right", "--case", "right-case", "--format", "text"];
  expect(at("2026-03-02T23:00:00Z", build)).toMatchObject({ code: 0 });
  const text = readFileSync(join(folder, "right/handout.txt"), "utf8");
  const later = ["build", plan, "--out", "later", "--format", "text", "--today", "2026-03-02"];
  for (const instant of ["1970-01-02T00:00:05Z", "2038-01-19T03:14:08Z"]) {
    expect(at(instant, later)).toMatchObject({ code: 0 });
    expect(readFileSync(join(folder, "later/handout.txt"), "utf8")).toBe(text);
    expect(at(instant, ["verify", "right-case"])).toMatchObject({ code: 0 });
    const { code, out } = at(instant, ["history", "right-case"]);
    expect([code, out]).toEqual([0, expect.stringContaining("March 3, 2026: made revision 0")]);
  }
});

it("a revision is of the hour it was given, whatever the clock says, and no paper of it is made until the clock is right", () => {
  const revision = "dog-cheek-abscess/plan.r1.yaml";
  const [early, late] = ["1970-01-02T00:00:05Z", "2038-01-19T03:14:08Z"].map((instant) => {
    expect(at(instant, ["revise", plan, ...visit])).toMatchObject({ code: 0, out: `${revision}\n` });
    expect(at(instant, ["build", revision, "--out", "revised", "--format", "text"])).toMatchObject({
      code: 1,
      out: "",
    });
    const text = readFileSync(join(folder, revision), "utf8");
    rmSync(join(folder, revision));
    return text;
  });
  expect(early).toBe(late);
  expect(existsSync(join(folder, "revised"))).toBe(false);
});

it("a visit that is yet to come by this machine's clock is not noted in a case, and one of years ago is told", () => {
  const revision = "dog-cheek-abscess/plan.r1.yaml";
  const noted = (instant: string) => at(instant, ["revise", plan, ...visit, "--case", "visit-case"]);
  const early = noted("1970-01-02T00:00:05Z");
  expect(early.err).toContain(`${revision} is of March 3, 2026, and today is January 1, 1970 by this machine's clock.`);
  expect([early.code, early.out]).toEqual([1, ""]);
  expect([existsSync(join(folder, revision)), existsSync(join(folder, "visit-case"))]).toEqual([false, false]);

  expect(noted("2026-03-03T23:00:00Z")).toMatchObject({ code: 0, out: `${revision}\n` });
  for (const gone of [revision, "visit-case"]) rmSync(join(folder, gone), { recursive: true });
  const late = noted("2038-01-19T03:14:08Z");
  expect(late.err).toContain(`${revision} is of March 3, 2026, and today is January 19, 2038`);
  expect(late).toMatchObject({ code: 0, out: `${revision}\n` });
  for (const gone of [revision, "visit-case"]) rmSync(join(folder, gone), { recursive: true });
});

it("a letter that is of a day to come by this machine's clock is not sent, and one of years ago is told", () => {
  const build = ["build", plan, "--out", "letter", "--format", "text,eml"];
  expect(at("2026-03-02T23:00:00Z", build)).toMatchObject({ code: 0 });
  const sending = (instant: string, ...more: string[]) =>
    at(instant, ["send", "letter", "--ledger", "state/sent.jsonl", ...more]);
  const server = ["--yes", "--smtp", "smtp://127.0.0.1:9"];
  const early = sending("1970-01-02T00:00:05Z", ...server);
  expect(early.err).toContain("letter is of March 2, 2026, and today is January 1, 1970 by this machine's clock.");
  expect([early.code, early.out, existsSync(join(folder, "state/sent.jsonl"))]).toEqual([1, "", false]);

  const late = sending("2038-01-19T03:14:08Z", "--dry-run");
  expect(late.err).toContain("letter is of March 2, 2026, and today is January 19, 2038 by this machine's clock.");
  expect(late.err).toContain("example.org, in es");
  const right = sending("2026-03-02T23:30:00Z", "--dry-run");
  expect([right.code, right.err]).toEqual([0, expect.not.stringContaining("clock")]);
});

it("a run that was killed while the clock was ahead keeps no later one from building", () => {
  const lock = join(folder, "locked/.hearthsheet.lock");
  mkdirSync(lock, { recursive: true });
  utimesSync(lock, new Date("2040-01-01"), new Date("2040-01-01"));
  const build = ["build", plan, "--out", "locked", "--format", "text", "--today", "2026-03-02"];
  const { code, err } = hearthsheet(build, { cwd: folder });
  expect(code, err).toBe(0);
  expect(readdirSync(join(folder, "locked")).sort()).toEqual(["handout.txt", "record.json"]);
});
