import { readFileSync } from "node:fs";
import { computeCosts } from "#compute/costs/costs.js";
import type { Course, Medicine, Visit } from "#compute/facts.js";
import type { Clinic, Plan } from "#plan/plan.js";
import type { Places } from "#problems/place.js";
import { readCash } from "#tables/cash.js";

type Price = Clinic["prices"][number];
type ClinicTerms = NonNullable<Clinic["estimate"]>;
type PlanTerms = NonNullable<Plan["estimate"]>;
export type Given = {
  /** null: a plan without an estimate. */
  items: string[] | null;
  prices?: (Partial<Price> & { item: string; price: Price["price"] })[];
  taxes?: Clinic["taxes"];
  terms?: Partial<ClinicTerms>;
  paid?: string;
  deposit?: PlanTerms["deposit"];
  discounts?: PlanTerms["discounts"];
  before?: PlanTerms["before"];
  collar?: string;
  currency?: string;
  country?: string;
  weight?: Plan["patient"]["weight"];
  clinic?: Partial<Clinic>;
  course?: Partial<Course>;
  medicines?: Partial<Medicine>[];
};

export const noCourse: Course = {
  visits: [],
  trips: { fewest: 0, likely: 0, most: 0 },
  purposes: [],
  ends: null,
  first: null,
  closed: [],
};
export const price = (low: string, high = low, likely: string | null = null): Price["price"] => ({ low, high, likely });
export const counts = (fewest: number, likely: number, most: number) => ({ fewest, likely, most });
export const span = (low: number, likely = low, high = likely) => ({ low, likely, high });

/** A visit on one day, or booked for a time; window: on one of the days from the first to the last. */
export const visit = (
  id: string,
  kind: string,
  when: string | [string, string, string],
  dependsOn: string | null = null,
  certainty: Visit["certainty"] = dependsOn === null ? "expected" : "possible",
): Visit => {
  const [earliest, ideal, latest] = typeof when === "string" ? [when, when, when].map((day) => day.slice(0, 10)) : when;
  const at = typeof when === "string" && when.includes("T") ? when : null;
  return {
    id,
    purposes: [{ kind }],
    certainty: at ? "booked" : certainty,
    earliest,
    ideal,
    latest,
    at,
    dependsOn,
  } as Visit;
};

const open = [{ open: "08:00", close: "18:00" }];
const hours = {
  ...Object.fromEntries(["monday", "tuesday", "wednesday", "thursday", "friday"].map((day) => [day, open])),
  saturday: [{ open: "09:00", close: "13:00" }],
  sunday: [],
};
const { value: cash } = readCash(readFileSync("shared/cash.json", "utf8"), "shared/cash.json");

/** Where a value stands, told by its path: the place of "estimate/items/2" is in the file of that name. */
const everywhere = (missing: string[]): Places =>
  new Proxy(
    {},
    {
      get: (_, path) =>
        missing.includes(String(path)) ? undefined : { file: String(path), line: 1, column: 1, length: 1 },
    },
  );

/** The costs of a made-up plan, discharged on a Monday; only what costs depend on is there. */
export function costs(given: Given) {
  const plan = {
    discharged: "2026-03-02T16:30",
    patient: { weight: given.weight ?? { value: "10", unit: "kg" } },
    unavailable: [],
    owner: { language: "en" },
    clinic: {
      country: given.country ?? "US",
      currency: given.currency ?? "USD",
      language: "en",
      hours,
      closed: [],
      weekend: ["saturday", "sunday"],
      taxes: given.taxes ?? [],
      prices: (given.prices ?? []).map((row) => ({
        per: "once",
        "by weight": [],
        "by time": [],
        includes: [],
        ...row,
      })),
      estimate: given.terms && { called: "estimate", "not included": [], ...given.terms },
      ...given.clinic,
    },
    estimate:
      given.items === null
        ? undefined
        : {
            paid: given.paid ?? "0",
            discounts: given.discounts ?? [],
            before: given.before ?? [],
            deposit: given.deposit,
            items: given.items,
          },
    ...(given.collar ? { collar: { type: given.collar } } : {}),
    places: everywhere(given.deposit ? [] : ["estimate/deposit"]),
  } as unknown as Plan;
  const medicines = (given.medicines ?? []) as Medicine[];
  return computeCosts(plan, { ...noCourse, ...given.course }, medicines, cash ?? []);
}

/** The estimate, which must be there. */
export function estimate(given: Given) {
  const { value, problems } = costs(given);
  if (!value) throw new Error(`no estimate: ${JSON.stringify(problems)}`);
  return value;
}

/** "code at path [words]: values" of each problem. */
export const told = (given: Given): string[] =>
  costs(given).problems.map(({ code, at, values }) => `${code} ${at.file}+${at.column - 1}: ${JSON.stringify(values)}`);
