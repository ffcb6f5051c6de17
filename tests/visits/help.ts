import { readFileSync } from "node:fs";
import type { Plan } from "#plan/plan.js";
import { unavailable } from "#plan/scalars/unavailable.js";
import type { Places } from "#problems/place.js";
import { readVisitKinds, type VisitKind } from "#tables/visits.js";
import type { Course, Visit } from "../../src/compute/facts.js";
import { computeVisits } from "../../src/compute/visits/visits.js";

export const kinds: VisitKind[] =
  readVisitKinds(readFileSync("shared/visits.json", "utf8"), "shared/visits.json").value ?? [];

const open = [{ open: "08:00", close: "18:00" }];
export type Hours = Plan["clinic"]["hours"];
export const everyDay: Hours = {
  monday: open,
  tuesday: open,
  wednesday: open,
  thursday: open,
  friday: open,
  saturday: open,
  sunday: open,
};
export const noSunday: Hours = { ...everyDay, saturday: [{ open: "09:00", close: "13:00" }], sunday: [] };

export type Case = {
  course: string[] | string[][];
  booked?: string[];
  unavailable?: string[];
  discharged?: string;
  hours?: Hours;
  clinic?: Partial<Plan["clinic"]>;
  clinician?: string;
  language?: string;
};

/** A plan as readPlan would hand it on; discharged on a Monday, at a clinic that never closes unless told otherwise. */
export function planOf(given: Case): Plan {
  const courses = given.course.some(Array.isArray) ? (given.course as string[][]) : [given.course as string[]];
  const places: Places = {};
  let line = 10;
  for (const [care, course] of courses.entries())
    for (const [i, text] of course.entries())
      places[`care/${care}/course/${i}`] = { file: "plan.yaml", line: line++, column: 9, length: text.length };
  for (const [i, text] of (given.booked ?? []).entries())
    places[`booked/${i}`] = { file: "plan.yaml", line: line++, column: 5, length: text.length };
  return {
    format: "hearthsheet/1",
    ...(given.clinician ? { clinician: given.clinician } : {}),
    revision: 0,
    done: [],
    discharged: given.discharged ?? "2026-03-02T16:30",
    patient: {
      name: "Bramble",
      species: "dog",
      sex: "spayed female",
      weight: { value: "24.6", unit: "kg" },
      allergies: [],
      conditions: [],
      takes: [],
    },
    owner: { name: "Lucía Ferrer", language: [given.language ?? "en"] },
    reason: "A wound",
    care: courses.map((course) => ({ topic: "open-wound-clinic-bandage", course })),
    booked: given.booked ?? [],
    medicines: [],
    unavailable: (given.unavailable ?? []).map((text) => unavailable.parse(text)),
    allow: [],
    places,
    clinic: {
      name: "Juniper Row Animal Clinic",
      address: ["18 Juniper Row"],
      phone: "+13125550142",
      "after hours": { name: "Lakeside Animal Emergency Hospital", phone: "+13125550187", address: [] },
      "time zone": "America/Chicago",
      country: "US",
      language: "en",
      currency: "USD",
      hours: given.hours ?? everyDay,
      "last appointment": { value: "30", unit: "min" },
      visit: { value: "20", unit: "min" },
      closed: [],
      taxes: [],
      clinicians: [],
      prices: [],
      collars: [],
      paper: "letter",
      ...given.clinic,
    } as Plan["clinic"],
  };
}

export const run = (given: Case) => computeVisits(planOf(given), kinds);

/** The course of a plan without anything that stops it. */
export function courseOf(given: Case): Course {
  const { value, problems } = run(given);
  if (!value) throw new Error(problems.map(({ code, values }) => `${code} ${JSON.stringify(values)}`).join("; "));
  return value;
}

/** "bandage-change-4 expected 03-06..03-07" */
export const brief = ({ id, purposes, certainty, earliest, latest, at, dependsOn, unless }: Visit): string =>
  [
    id,
    ...purposes.slice(1).map(({ kind, number }) => `+${kind}-${number}`),
    certainty,
    at ?? (earliest === latest ? earliest.slice(5) : `${earliest.slice(5)}..${latest.slice(5)}`),
    ...(dependsOn ? [`if ${dependsOn}`] : []),
    ...(unless ? [`unless ${unless}`] : []),
  ].join(" ");

/** Codes of the problems with the words or place they point at: "closed-day 10:9+6". */
export const told = (given: Case): string[] =>
  run(given).problems.map(({ code, at }) => `${code} ${at.line}:${at.column}+${at.length}`);
