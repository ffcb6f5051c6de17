import { describe, expect, it } from "vitest";
import { readCare } from "#tables/topics.js";
import { readVisitKinds } from "#tables/visits.js";
import { files, tables } from "./help.js";

const path = "shared/topics/abscess-home-care.json";
const changed = (file: string, change: (text: string) => string) =>
  readCare({ ...files, [file]: change(files[file] ?? "") }).problems.map(({ code, at, values }) => ({
    code,
    file: at.file,
    ...values,
  }));

describe("the tables of care", () => {
  it("holds at least 24 topics, each in the file of its name", () => {
    expect(tables.topics.length).toBeGreaterThanOrEqual(24);
    const names = Object.keys(files).flatMap((file) => /topics\/(.*)\.json$/.exec(file)?.[1] ?? []);
    expect(tables.topics.map(({ id }) => id).sort()).toEqual(names.sort());
  });

  it("says each statement somewhere", () => {
    const { topics, bandages, additions, statements, collars } = tables;
    const voices = [...topics, ...bandages, ...additions];
    const said = new Set([
      ...(["done", "steps", "normal", "avoid", "supplies", "ends"] as const).flatMap((list) =>
        voices.flatMap((voice) => voice[list].map((id) => `${list}.${id}`)),
      ),
      ...voices.flatMap(({ signs }) => signs.map(({ id }) => `signs.${id}`)),
      ...Object.values(collars.kinds).flatMap((kind) =>
        [...kind.statements, ...Object.values(kind.ofAnimal).flat()].map((id) => `collar.${id}`),
      ),
    ]);
    const rows = Object.entries(statements).flatMap(([list, all]) => all.map(({ id }) => `${list}.${id}`));
    expect(rows.filter((id) => !said.has(id))).toEqual([]);
  });

  it("knows the visits it names", () => {
    const kinds = readVisitKinds(files["shared/visits.json"] ?? "", "shared/visits.json").value?.map(({ id }) => id);
    const named = [...tables.topics, ...tables.collars.until].flatMap(({ visits }) => visits);
    expect(named.filter((kind) => !kinds?.includes(kind))).toEqual([]);
  });

  it("uses each trait of a topic", () => {
    const used = new Set(tables.additions.flatMap(({ when }) => [...(when.traits ?? []), ...(when.traitsNot ?? [])]));
    expect(tables.topics.flatMap(({ traits }) => traits).filter((trait) => !used.has(trait))).toEqual([]);
  });

  it("gives each name to one row only", () => {
    for (const rows of [tables.sites, tables.bandages]) {
      const names = rows.flatMap(({ id, aliases }) => [id, ...aliases]);
      expect(names.filter((name, i) => names.indexOf(name) !== i)).toEqual([]);
    }
  });
});

describe("a table that is wrong is told with its file", () => {
  it("text that is not JSON", () => {
    expect(changed(path, () => "{")).toMatchObject([{ code: "table-not-json", file: path }]);
  });
  it("a file that is missing", () => {
    expect(changed("shared/sites.json", () => "")).toMatchObject([
      { code: "table-not-json", file: "shared/sites.json" },
    ]);
  });
  it("a row without a source", () => {
    expect(changed(path, (text) => text.replace(/,\s*"source": "[^"]*"/, ""))).toMatchObject([
      { code: "table-row-wrong", file: path, detail: expect.stringContaining("source") },
    ]);
  });
  it("a statement that is not there", () => {
    expect(changed(path, (text) => text.replace('"warm-compress"', '"cold-compress"'))).toEqual([
      { code: "table-row-wrong", file: path, detail: 'abscess-home-care: there is no "steps.cold-compress"' },
    ]);
  });
  it("a statement that stands twice", () => {
    const signs = "shared/statements/signs.json";
    expect(changed(signs, (text) => text.replace('"id": "collapse"', '"id": "breathing"'))).toMatchObject([
      { code: "table-row-wrong", file: signs, detail: expect.stringContaining('"breathing" stands here twice') },
    ]);
  });
});
