/** What is told of the first dose at home, every hour worked by hand. The clinic hands the paper out at 16:30 on 2026-03-02. */
import { describe, expect, test } from "vitest";
import { only, q, told, type Written } from "./help.js";

const tablets: Written = { name: "x", tablet: q("5 mg"), give: q("1 tablet"), "last given": "16:00" };

describe("when the clinic last gave it", () => {
  test("may be the moment the paper is handed out, and not later", () => {
    expect(only({ ...tablets, "last given": "16:30" }).lastGiven).toBe("2026-03-02T16:30");
    expect(told("last-given-after-discharge", { ...tablets, "last given": "16:31" })).toEqual([
      { at: "0/last given", medicine: "x", given: "2026-03-02 16:31" },
    ]);
  });

  test("may be a day of its own", () => {
    expect(only({ ...tablets, "last given": "2026-03-01T20:00" }).lastGiven).toBe("2026-03-01T20:00");
    expect(only({ ...tablets, "last given": "not given" }).lastGiven).toBeNull();
  });

  test("is asked for at the medicine where nothing is said of it", () => {
    expect(told("last-given-missing", { ...tablets, "last given": undefined })).toEqual([{ at: "0", medicine: "x" }]);
    expect(told("last-given-missing", { ...tablets, "last given": "not given" })).toEqual([]);
    expect(told("last-given-missing", tablets)).toEqual([]);
  });
});

describe("a first dose that the plan says", () => {
  test("at the moment the paper is handed out is tomorrow's, if it is a time of day", () => {
    expect(only({ ...tablets, "last given": "not given", first: "16:30" }).first).toBe("2026-03-03T16:30");
    expect(only({ ...tablets, "last given": "not given", first: "16:31" }).first).toBe("2026-03-02T16:31");
  });

  test("with its day lies after that moment", () => {
    expect(told("first-before-discharge", { ...tablets, first: "2026-03-02T16:30" })).toEqual([
      { at: "0/first", medicine: "x", given: "2026-03-02 16:30" },
    ]);
    expect(only({ ...tablets, "last given": "not given", first: "2026-03-02T16:31" }).first).toBe("2026-03-02T16:31");
  });

  test("stands in its own time of day", () => {
    const { doses } = only({ ...tablets, first: "2026-03-03T06:45" });
    expect(doses[0]).toMatchObject({ at: "2026-03-03T06:45", slot: "06:45", part: "morning" });
  });

  // 16:00 to 20:20 are four hours and a third; nine are three quarters of twelve.
  test("too soon after the clinic's is asked about, with the hours", () => {
    expect(told("doses-too-close", { ...tablets, first: "20:20" })).toEqual([
      { at: "0/first", medicine: "x", hours: "4.3", least: "9", every: 12 },
    ]);
    expect(told("doses-too-close", { ...tablets, first: "2026-03-03T00:59" })).toHaveLength(1);
    expect(told("doses-too-close", { ...tablets, first: "2026-03-03T01:00" })).toEqual([]);
    expect(told("doses-too-close", { ...tablets, "last given": "not given", first: "16:31" })).toEqual([]);
  });

  // Four and a half hours are three quarters of six.
  test("too soon of four a day is told with the least that may be", () => {
    expect(told("doses-too-close", { ...tablets, every: "6 h", first: "20:00" })).toMatchObject([
      { hours: "4", least: "4.5", every: 6 },
    ]);
  });

  // 18 hours are one and a half times twelve; from 16:00 that is 10:00.
  test("too late after the clinic's is asked about", () => {
    expect(told("first-dose-late", { ...tablets, first: "2026-03-03T10:00" })).toEqual([]);
    expect(told("first-dose-late", { ...tablets, first: "2026-03-03T10:15" })).toEqual([
      { at: "0/last given", medicine: "x", hours: "18.3", every: 12, first: "2026-03-03 10:15" },
    ]);
    expect(told("first-dose-late", { ...tablets, "last given": "not given", first: "2026-03-04T08:00" })).toEqual([]);
  });
});

// 11:30 to 20:00 are less than nine hours; to 08:00 they are twenty and a half.
test("a first dose at the household's time that comes too late is asked about where the clinic's was written", () => {
  expect(told("first-dose-late", { ...tablets, "last given": "11:30" })).toEqual([
    { at: "0/last given", medicine: "x", hours: "20.5", every: 12, first: "2026-03-03 08:00" },
  ]);
});
