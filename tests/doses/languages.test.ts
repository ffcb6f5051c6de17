import { expect, test } from "vitest";
import { computeDoses } from "#compute/doses/doses.js";
import { namedIn } from "#compute/doses/find.js";
import { misspelt } from "#compute/doses/misspelt.js";
import { medicineNames } from "#locale/medicine-names.js";
import { house } from "../examples/examples.js";
import { planWith, q } from "./help.js";

const { rows } = house.tables.medicines;

test("each language names medicines, and each is found by any of its names, and by no other's", () => {
  const languages = medicineNames(house.locales).filter((names) => Object.keys(names).length > 1);
  expect(languages.length).toBeGreaterThanOrEqual(8);
  for (const [id, name] of languages.flatMap((names) => Object.entries(names))) {
    expect([name, namedIn(name, rows).map((row) => row.id)]).toEqual([name, [id]]);
    expect([name, misspelt(name, rows)]).toEqual([name, []]);
  }
  const all = rows.flatMap(({ names }) => names);
  expect(all.length).toBe(new Set(all).size);
});

const written: [language: string, own: string, painkiller: string][] = [
  ["fr", "Carprofène", "Ibuprofène"],
  ["de", "Carprofen", "Ibuprofen"],
  ["es", "carprofeno", "ibuprofeno"],
  ["zh-Hans", "卡洛芬", "布洛芬"],
  ["ar", "كاربروفين", "إيبوبروفين"],
];

test.each(written)("in %s a clinic is asked and an owner warned as in English", (_, own, painkiller) => {
  const of = (name: string) =>
    computeDoses(
      planWith([{ name, tablet: q("100 mg"), dose: q("9 mg/kg"), every: "24 h", for: q("4 days") }]),
      house.tables.medicines,
    );
  const codes = (name: string) =>
    of(name)
      .problems.map(({ code }) => code)
      .sort();
  expect(codes("carprofen")).toContain("dose-over-limit");
  expect(codes(own)).toEqual(codes("carprofen"));
  expect(codes("ibuprofen")).toContain("never-for-species");
  expect(codes(painkiller)).toEqual(codes("ibuprofen"));
});
