import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { codes } from "#problems/problem.js";
import { visitKinds } from "#problems/visits.js";
import { readVisitKinds } from "#tables/visits.js";
import { kinds } from "./help.js";

const json = (file: string) => JSON.parse(readFileSync(file, "utf8"));

describe.each(["en", "es"])("the words of %s", (tag) => {
  test("every kind of visit has a name, a reason and what happens", () => {
    const words = json(`locales/${tag}/visits.json`);
    expect(Object.keys(words).sort()).toEqual(kinds.map(({ id }) => id).sort());
    for (const kind of Object.values(words)) expect(Object.keys(kind as object)).toEqual(["name", "why", "what"]);
  });

  test("every problem of the course is told, with values it has", () => {
    const words = json(`locales/${tag}/problems/visits.json`);
    expect(Object.keys(words).sort()).toEqual(Object.keys(visitKinds).sort());
  });
});

test("the codes of the course are among all codes", () => {
  expect(codes).toEqual(expect.arrayContaining(Object.keys(visitKinds)));
});

describe("the table of visits", () => {
  const row = { id: "recheck", words: ["check"], minutes: null, source: "common practice, no source" };
  const faults = (...rows: unknown[]) =>
    readVisitKinds(JSON.stringify(rows), "v.json").problems.map(({ code }) => code);

  test("a good row is read, a bad one told", () => {
    expect(faults(row)).toEqual([]);
    expect(faults({ ...row, source: undefined })).toEqual(["table-row-wrong"]);
    expect(faults({ ...row, usual: { from: 5, to: 3 } })).toEqual(["table-row-wrong"]);
    expect(faults(row, { ...row, id: "check" })).toEqual(["table-row-wrong"]);
    expect(readVisitKinds("[", "v.json").problems.map(({ code }) => code)).toEqual(["table-not-json"]);
  });

  test("published days are as published", () => {
    const facts = json("shared/visits.json") as { id: string; usual?: unknown; source: string }[];
    // Cote, Clinical Veterinary Advisor, 4th ed, p. 3223.
    expect(facts.find(({ id }) => id === "drain-removal")?.usual).toEqual({ from: 3, to: 5 });
    expect(facts.find(({ id }) => id === "suture-removal")?.usual).toEqual({ from: 10, to: 14 });
    for (const { source } of facts)
      expect(source).toMatch(/^(Cote|chapter 75, "Primary Wound Closure"|common practice, no source$)/);
  });
});
