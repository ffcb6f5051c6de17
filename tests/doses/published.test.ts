/** Each published row of the table against check values that were read apart from it, with their own sources (published.json). */
import { describe, expect, test } from "vitest";
import type { Regimen } from "#tables/medicines.js";
import { codes, table } from "./help.js";
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

type Checked = (typeof facts)[number]["value"];

/** Whether a row of the table says of dose, unit, species, route and interval what a check value says. */
function agrees(value: Checked, { dose, route: by, species: of, every, forms }: Regimen): boolean {
  const [route = "", form] = value.route.split("-");
  const [unit, factor, per] = units[value.unit] ?? ["?", 1, "?"];
  const scaled = (value.dose ?? []).map((one) => (one === null ? null : Number((one * factor).toPrecision(12))));
  const close = (one: string | null, other: number | null | undefined) =>
    (one === null ? null : Number(one)) === (other ?? null);
  return (
    close(dose.least, scaled[0]) &&
    close(dose.most, scaled[1]) &&
    dose.unit === unit &&
    dose.per === per &&
    (!forms || forms.some((one) => form === one || (form === "suspension" && one === "liquid"))) &&
    (routes[route] ?? []).every((one) => by.some((other) => other === one)) &&
    value.species.split("+").every((one) => of.some((other) => other === one)) &&
    (value.interval_h === null ? per === "day" || every === null : every?.most === value.interval_h)
  );
}

describe.each(facts)("$id", ({ value, source, status }) => {
  const regimens = (rowOf(value.drug)?.regimens ?? []).filter(({ standing }) => standing === "published");
  const same = (regimen: Regimen) => agrees(value, regimen);

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

const rows = table.flatMap(({ id, regimens }) =>
  regimens.flatMap((regimen, i) => (regimen.standing === "published" ? [{ title: `${id} ${i}`, id, regimen }] : [])),
);

// Three bands of weight are one check value, and labels of insulin say how to start (both below).
const apart = ["methylprednisolone", "insulin"];
test.each(rows.filter(({ id }) => !apart.includes(id)))("$title is held against a check value", ({ id, regimen }) => {
  expect(facts.filter(({ value }) => value.drug === id && agrees(value, regimen))).not.toEqual([]);
});

test("methylprednisolone stands by bands of weight in pounds", () => {
  const bands = published.find(({ id }) => id.startsWith("drug.methylprednisolone"))?.value;
  const stands = rowOf("methylprednisolone")?.regimens.map(({ weight, dose }) => [
    `${weight?.least?.value}-${weight?.most?.value} ${weight?.least?.unit}`,
    [Number(dose.least), Number(dose.most)],
  ]);
  expect(Object.fromEntries(stands ?? [])).toEqual(typeof bands === "object" ? bands.dose : null);
});

// Labels of porcine insulin zinc (dogs, cats) and of protamine zinc insulin (cats), both 40 IU/mL, read in copies.
test.each([
  ["dog", "24.6", "0.5", "24 h"],
  ["dog", "24.6", "0.375", "12 h"],
  ["cat", "5", "0.2", "12 h"],
  ["cat", "5", "0.7", "12 h"],
] as const)("a %s of %s kg may start on %s IU/kg of insulin every %s", (species, kg, dose, every) => {
  const written = {
    name: "insulin",
    insulin: { value: "40", unit: "IU/mL" as const },
    syringe: "U-40" as const,
    container: { value: "10", unit: "mL" as const },
    route: "under the skin" as const,
    dose: { value: dose, unit: "IU/kg" as const },
    every,
  };
  const said = codes([written], { species, weight: { value: kg, unit: "kg" } });
  expect(said.filter((code) => code !== "rounding-too-far")).toEqual([]);
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
