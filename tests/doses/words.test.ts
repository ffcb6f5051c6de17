import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { namedIn } from "#compute/doses/find.js";
import { doseKinds } from "#problems/doses.js";
import { table } from "./help.js";

const languages = ["en", "es"];
const words = (language: string, name: string) =>
  JSON.parse(readFileSync(`locales/${language}/${name}.json`, "utf8")) as Record<string, Record<string, string>>;
const said = [...new Set(table.flatMap(({ statements }) => statements.map(({ id }) => id)))].sort();
const uses = [...new Set(table.flatMap(({ regimens }) => regimens.flatMap(({ use }) => use ?? [])))];

describe.each(languages)("%s", (language) => {
  test("has words for every statement, and no others", () => {
    const { name: _, ...statements } = words(language, "medicines");
    const keys = Object.entries(statements).flatMap(([group, rows]) =>
      Object.keys(rows).map((row) => `${group}.${row}`),
    );
    expect(keys.sort()).toEqual(said);
  });

  test("has a name for every medicine, one that the table finds it by", () => {
    const names = words(language, "medicines")["name"] ?? {};
    expect(Object.keys(names).sort()).toEqual(table.map(({ id }) => id).sort());
    for (const [id, name] of Object.entries(names))
      expect([name, ...namedIn(name, table).map((row) => row.id)]).toEqual([name, id]);
  });

  test("has a sentence and a hint for every problem, and no others", () => {
    const problems = words(language, "problems/doses");
    expect(Object.keys(problems).sort()).toEqual(Object.keys(doseKinds).sort());
    for (const told of Object.values(problems))
      expect(told).toMatchObject({ what: expect.any(String), hint: expect.any(String) });
  });

  test("names every narrow use, both species and every form", () => {
    const problems = words(language, "problems/doses");
    for (const use of uses) expect(problems["labelled-for"]).toHaveProperty([`what_${use}`]);
    for (const code of ["not-labelled", "never-for-species"])
      for (const species of ["dog", "cat"]) expect(problems[code]).toHaveProperty([`what_${species}`]);
    for (const form of ["tablet", "capsule", "liquid"])
      expect(problems["strength-too-strong"]).toHaveProperty([`hint_${form}`]);
  });
});

test("both languages show the same values", () => {
  const shown = (language: string, name: string) =>
    Object.entries(words(language, name)).flatMap(([group, rows]) =>
      Object.entries(rows).map(
        ([row, text]) => `${group}.${row}: ${[...new Set(text.match(/\{\{\w+\}\}/g))].sort().join(" ")}`,
      ),
    );
  for (const name of ["medicines", "problems/doses"])
    expect(shown("es", name).sort()).toEqual(shown("en", name).sort());
});

test("every row of the table says where it comes from", () => {
  for (const { source, regimens, never, notWith, statements } of table)
    for (const row of [{ source }, ...regimens, ...never, ...notWith, ...statements])
      expect(row.source).toMatch(/\w+ \w+/);
});
