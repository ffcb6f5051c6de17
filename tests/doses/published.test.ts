/** Each published row of the table against check values that were read apart from it, with their own sources (published.json). */
import { describe, expect, test } from "vitest";
import type { Regimen } from "#tables/medicines.js";
import { table } from "./help.js";
import published from "./published.json" with { type: "json" };

type Fact = {
  drug: string;
  species: string;
  route: string;
  dose: (number | null)[] | null;
  unit: string;
  interval_h: number | null;
  duration_days: number | number[] | null;
};

const routes: Record<string, string[]> = {
  oral: ["mouth"],
  transmucosal: ["mouth"],
  topical: ["ear", "skin"],
  sc: ["under the skin"],
  "im/sc": ["under the skin"],
  "sc/iv": ["under the skin"],
};

// How each unit of the check values stands in the table: unit, factor, per.
const units: Record<string, [string, number, string]> = {
  "mg/kg": ["mg/kg", 1, "dose"],
  "mg/lb": ["mg/lb", 1, "dose"],
  "mg/cat": ["mg", 1, "dose"],
  "mg/cat (1.5-inch ribbon, 20 mg/g)": ["mg", 1, "dose"],
  "mg/kg/day": ["mg/kg", 1, "day"],
  "mg per 4.5 kg (10 lb) per day": ["mg/lb", 1 / 10, "day"],
};

const facts = published.flatMap(({ id, value, source, status }) =>
  typeof value === "object" && Array.isArray(value.dose) ? [{ id, value: value as Fact, source, status }] : [],
);
const rowOf = (drug: string) => table.find(({ id }) => id === drug);

describe.each(facts)("$id", ({ value, source, status }) => {
  const route = value.route.split("-")[0] ?? "";
  const form = value.route.split("-")[1];
  const regimens = (rowOf(value.drug)?.regimens ?? []).filter(
    ({ standing, forms }) =>
      standing === "published" &&
      (!forms || forms.some((one) => form === one || (form === "suspension" && one === "liquid"))),
  );
  const species = value.species.split("+");
  const close = (a: string | null, b: number | null | undefined) => (a === null ? null : Number(a)) === (b ?? null);
  const [unit, factor, per] = units[value.unit] ?? ["?", 1, "?"];
  const scaled = (value.dose ?? []).map((dose) => (dose === null ? null : Number((dose * factor).toPrecision(12))));

  const same = ({ dose, route: by, species: of, every }: Regimen) =>
    close(dose.least, scaled[0]) &&
    close(dose.most, scaled[1]) &&
    dose.unit === unit &&
    dose.per === per &&
    (routes[route] ?? []).every((one) => by.some((other) => other === one)) &&
    species.every((one) => of.some((other) => other === one)) &&
    (value.interval_h === null ? per === "day" || every === null : every?.most === value.interval_h);

  test("stands in the table with this dose, unit, route and interval", () => {
    expect(regimens.some(same)).toBe(true);
  });

  test("for no more days", () => {
    const days = Array.isArray(value.duration_days) ? value.duration_days : [null, value.duration_days];
    if (status === "memory" || days[1] === null) return;
    expect(regimens.filter(same).map((regimen) => regimen.days?.most)).toContain(days[1]);
  });

  test("cites the same section", () => {
    const section = /(520|522|524|529)\.\d+/.exec(source)?.[0] ?? "";
    expect(regimens.filter(same).some((regimen) => regimen.source.includes(section))).toBe(true);
  });
});

test("methylprednisolone stands by bands of weight in pounds", () => {
  const bands = published.find(({ id }) => id.startsWith("drug.methylprednisolone"))?.value;
  const stands = rowOf("methylprednisolone")?.regimens.map(({ weight, dose }) => [
    `${weight?.least?.value}-${weight?.most?.value} ${weight?.least?.unit}`,
    [Number(dose.least), Number(dose.most)],
  ]);
  expect(Object.fromEntries(stands ?? [])).toEqual(typeof bands === "object" ? bands.dose : null);
});

test("extralabel medicines have no published row", () => {
  for (const name of ["tramadol", "gabapentin", "trazodone", "doxycycline"])
    expect(rowOf(name)?.regimens.filter(({ standing }) => standing === "published")).toEqual([]);
});

test("every medicine of the check values has a row", () => {
  const drugs = new Set(published.map(({ id }) => id.split(".")[1] ?? ""));
  expect([...drugs].filter((drug) => !rowOf(drug))).toEqual([]);
  expect(drugs.size).toBeGreaterThanOrEqual(20);
});

test("cats have enrofloxacin up to 5 mg/kg a day, whatever superseded copies say", () => {
  const cat = rowOf("enrofloxacin")?.regimens.find(({ species }) => species.includes("cat"));
  expect(cat?.dose).toEqual({ least: "5", most: "5", unit: "mg/kg", per: "day" });
});
