/** What each kind of rule has to say, and with what: rules made up for it, an animal of 10 kg. */
import { describe, expect, test } from "vitest";
import { Exact } from "#compute/doses/exact.js";
import { ageUnknown, animalOutside } from "#compute/doses/limits/animal.js";
import { courseOutside, courseShort } from "#compute/doses/limits/course.js";
import { doseOutside } from "#compute/doses/limits/dose.js";
import { type Dosing, ruleText } from "#compute/doses/limits/dosing.js";
import { intervalOutside } from "#compute/doses/limits/interval.js";
import { labelProblems, limitProblems } from "#compute/doses/limits/limits.js";
import type { Problem } from "#problems/problem.js";
import type { Regimen } from "#tables/medicines.js";
import { q } from "./help.js";

const source = "a made-up label";
const rule = (more: Partial<Regimen>) =>
  ({
    dose: { least: null, most: null, unit: "mg/kg", per: "dose" },
    every: null,
    standing: "published",
    source,
    ...more,
  }) as Regimen;
const mgPerKg = (least: string | null, most: string | null, per: "dose" | "day" = "dose"): Partial<Regimen> => ({
  dose: { least, most, unit: "mg/kg", per } as Regimen["dose"],
});

type Case = { months?: number | null; days?: number; count?: number; hours?: number; give?: string; dose?: string };
/** Tablets of 10 mg, cut in quarters, or as many as give says; ordered as so many mg/kg where dose says it. */
function dosing(
  { months = null, days = 7, count = 14, hours = 12, give = "1", dose }: Case,
  more: Partial<Dosing> = {},
) {
  const ordered = dose === undefined ? null : new Exact(dose).times(10);
  const amount = ordered ? ordered.div(10) : new Exact(give);
  return {
    asked: {
      planned: { name: "x" },
      kg: new Exact(10),
      months,
      at: (...path: (string | number)[]) => ({ file: path.join("/"), line: 1, column: 1, length: 1 }),
    },
    form: {
      kind: "tablet",
      unit: "tablet",
      step: new Exact("0.25"),
      strength: q("10 mg"),
      holds: q("10 mg"),
      container: null,
    },
    step: {
      order: dose === undefined ? { give: q("1 tablet") } : { dose: { value: dose, unit: "mg/kg" } },
      giving: {
        give: { value: amount.toFixed(), unit: "tablet" },
        amount,
        holds: amount.times(10),
        ordered,
      },
      every: { hours },
      count,
      days,
      path: [],
    },
    days,
    last: true,
    clinicDoses: 1,
    asNeeded: false,
    tapering: false,
    ...more,
  } as unknown as Dosing;
}

const said = (problems: Problem[]) => problems.map(({ code, at, values }) => [code, at.file, values]);

describe("a rule for animals", () => {
  test("of some weight holds from its least to its most, both among them", () => {
    const codes = (weight: Regimen["weight"]) => animalOutside(rule({ weight }), dosing({})).map(({ code }) => code);
    expect(codes({ least: q("10 kg"), most: null })).toEqual([]);
    expect(codes({ least: null, most: q("10 kg") })).toEqual([]);
    expect(codes({ least: q("10.01 kg"), most: null })).toEqual(["weight-outside-limit"]);
    expect(codes({ least: null, most: q("9.99 kg") })).toEqual(["weight-outside-limit"]);
    expect(said(animalOutside(rule({ weight: { least: q("2 kg"), most: q("20 lb") } }), dosing({})))).toEqual([
      ["weight-outside-limit", "", { medicine: "x", given: "10 kg", limit: "2 kg-20 lb", source }],
    ]);
    const heavier = rule({ weight: { least: q("30 lb"), most: null } });
    expect(animalOutside(heavier, dosing({}))).toMatchObject([{ values: { limit: "30 lb" } }]);
  });

  test("of some age holds from its least to its most, both among them, and is worth a look where the age is unknown", () => {
    const of = (months: Regimen["months"], age: number | null) =>
      said(animalOutside(rule({ months }), dosing({ months: age })));
    expect(of({ least: 6, most: 12 }, 6)).toEqual([]);
    expect(of({ least: 6, most: 12 }, 12)).toEqual([]);
    expect(of({ least: 6, most: 12 }, null)).toEqual([]);
    expect(of({ least: null, most: 12 }, 0)).toEqual([]);
    const values = { medicine: "x", source };
    expect(of({ least: 6, most: null }, 5)).toEqual([["age-outside-limit", "", { ...values, months: 5, limit: "6+" }]]);
    expect(of({ least: null, most: 12 }, 13)).toEqual([
      ["age-outside-limit", "", { ...values, months: 13, limit: "0-12" }],
    ]);
    const unknown = (months: number | null) =>
      said(ageUnknown(rule({ months: { least: 6, most: 12 } }), dosing({ months })));
    expect(unknown(null)).toEqual([["age-unknown", "", { ...values, limit: "6-12" }]]);
    expect(unknown(3)).toEqual([]);
    expect(ageUnknown(rule({}), dosing({}))).toEqual([]);
  });
});

describe("a rule for a course", () => {
  const days = (least: number | null, most: number | null) => rule({ days: { least, most } as Regimen["days"] });

  test("is broken by more days than it says, and by more doses, those at the clinic where it counts them", () => {
    const limit = { medicine: "x", limit: 7, source };
    expect(courseOutside(days(null, 7), dosing({ days: 7 }))).toEqual([]);
    expect(said(courseOutside(days(null, 7), dosing({ days: 8 })))).toEqual([
      ["days-over-limit", "for", { ...limit, days: 8 }],
    ]);
    expect(courseOutside(days(null, 7), dosing({ days: 8 }, { tapering: true }))).toEqual([]);
    const doses = (clinicCounts: boolean) => rule({ doses: { most: 3, clinicCounts } });
    expect(courseOutside(doses(false), dosing({ count: 3 }))).toEqual([]);
    expect(said(courseOutside(doses(true), dosing({ count: 3 })))).toEqual([
      ["doses-over-limit", "for", { medicine: "x", doses: 4, limit: 3, source }],
    ]);
  });

  test("is worth a look where the last step ends before its least, and asked about before half of it", () => {
    const short = (least: number | null, given: number, more: Partial<Dosing> = {}) =>
      said(courseShort(days(least, null), dosing({ days: given }, more)));
    const values = { medicine: "x", limit: 8, source };
    expect(short(null, 1)).toEqual([]);
    expect(short(8, 8)).toEqual([]);
    expect(short(8, 7)).toEqual([["days-under-limit", "for", { ...values, days: 7 }]]);
    expect(short(8, 4)).toEqual([["days-under-limit", "for", { ...values, days: 4 }]]);
    expect(short(8, 3)).toEqual([["days-far-under-limit", "for", { ...values, days: 3 }]]);
    expect(short(8, 3, { last: false })).toEqual([]);
    expect(short(8, 3, { tapering: true })).toEqual([]);
    expect(courseShort(rule({}), dosing({}))).toEqual([]);
  });

  test("says how often: no oftener, and no seldomer but in a taper or as needed", () => {
    const every = { least: 8, most: 12 } as Regimen["every"];
    const of = (hours: number, more: Partial<Dosing> = {}) =>
      said(intervalOutside(rule({ every }), dosing({ hours }, more)));
    const values = { medicine: "x", source };
    expect([of(8), of(12)]).toEqual([[], []]);
    expect(of(6)).toEqual([["doses-too-often", "every", { ...values, every: 6, limit: 8 }]]);
    expect(of(24)).toEqual([["doses-too-seldom", "every", { ...values, every: 24, limit: 12 }]]);
    expect(of(24, { tapering: true })).toEqual([]);
    expect(of(24, { asNeeded: true })).toEqual([]);
    expect(of(6, { asNeeded: true })).toHaveLength(1);
    expect(intervalOutside(rule({}), dosing({}))).toEqual([]);
  });
});

describe("a rule for a dose", () => {
  const of = (limits: Partial<Regimen>, given: Case, more: Partial<Dosing> = {}) =>
    doseOutside(rule(limits), dosing(given, more)).map(({ code, at, values }) => [code, at.file, values]);

  test("is told with what was ordered, or with what is given and what that comes to", () => {
    const values = { medicine: "x", limit: "2 mg/kg", context: "", source };
    expect(of(mgPerKg(null, "2"), { dose: "3" })).toEqual([
      ["dose-over-limit", "dose", { ...values, given: "3 mg/kg" }],
    ]);
    expect(of(mgPerKg(null, "2"), { give: "3" })).toEqual([
      ["dose-over-limit", "give", { ...values, given: "3 tablet (3 mg/kg)" }],
    ]);
    expect(of(mgPerKg("2", "4"), { dose: "1" })).toEqual([
      ["dose-under-limit", "dose", { ...values, given: "1 mg/kg" }],
    ]);
    expect(of({ ...mgPerKg("1", "2"), standing: "usual" }, { dose: "3" })).toMatchObject([
      ["dose-unusual", "dose", {}],
    ]);
    expect([of(mgPerKg("1", "2"), { dose: "2" }), of(mgPerKg("1", "2"), { dose: "1" })]).toEqual([[], []]);
  });

  test("of which there is no least, or no most, holds on that side; a taper may go below", () => {
    expect(of(mgPerKg(null, "2"), { dose: "0.1" })).toEqual([]);
    expect(of(mgPerKg("2", null), { dose: "50" })).toEqual([]);
    expect(of(mgPerKg("2", null), { dose: "1" }, { tapering: true })).toEqual([]);
    expect(of(mgPerKg("2", "4"), { dose: "5" }, { tapering: true })).toHaveLength(1);
  });

  test("is told in the unit it was ordered in; what is counted, in milligrams for each kilogram", () => {
    const { step } = dosing({ give: "3" });
    const ordered = (unit: string, value: string) => {
      const giving = { ...step.giving, ordered: new Exact(30) };
      const order = { dose: { value, unit } } as unknown as Dosing["step"]["order"];
      return doseOutside(rule(mgPerKg(null, "2")), dosing({}, { step: { ...step, giving, order } })).map((one) =>
        one.code === "dose-over-limit" ? [one.at.file, one.values.given, one.values.limit] : [],
      );
    };
    expect(ordered("mg/lb", "1.36")).toEqual([["dose", "1.36 mg/lb", "2 mg/kg (0.907 mg/lb)"]]);
    expect(ordered("tablet/kg", "0.3")).toEqual([["dose", "3 tablet (3 mg/kg)", "2 mg/kg"]]);
  });

  // 10 kg, tablets of 10 mg: a bound is rounded to the pieces that can be given, and a dose to a tenth of the bound.
  test("leaves room for rounding, in pieces and in milligrams, and no more", () => {
    const { form } = dosing({});
    const whole: Partial<Dosing> = { form: { ...form, step: new Exact(1) } };
    const codes = (...args: Parameters<typeof of>) => of(...args).map(([code]) => code);
    // 41 mg are 4.25 tablets in quarters; 4.5 are more, though not a tenth more.
    expect(codes(mgPerKg(null, "4.1"), { give: "4.25" })).toEqual([]);
    expect(codes(mgPerKg(null, "4.1"), { give: "4.5" })).toEqual(["dose-over-limit"]);
    // 26 mg are 3 whole tablets, and these more than a tenth too much; of 28 mg they are not.
    expect(codes(mgPerKg(null, "2.6"), { give: "3" }, whole)).toEqual(["dose-over-limit"]);
    expect(codes(mgPerKg(null, "2.8"), { give: "3" }, whole)).toEqual([]);
    // 41 mg are at least 4 tablets; 3.75 are less, though not a tenth less.
    expect(codes(mgPerKg("4.1", "9"), { give: "4" })).toEqual([]);
    expect(codes(mgPerKg("4.1", "9"), { give: "3.75" })).toEqual(["dose-under-limit"]);
    // 24 mg are 2 whole tablets, and these more than a tenth too little; of 22 mg they are not.
    expect(codes(mgPerKg("2.4", "9"), { give: "2" }, whole)).toEqual(["dose-under-limit"]);
    expect(codes(mgPerKg("2.2", "9"), { give: "2" }, whole)).toEqual([]);
  });

  test("in another unit than the medicine's strength says nothing", () => {
    const units = { dose: { least: null, most: "1", unit: "IU/kg", per: "dose" } as unknown as Regimen["dose"] };
    expect(of(units, { dose: "30" })).toEqual([]);
  });

  test("tells where the point has slipped", () => {
    const context = (limits: Partial<Regimen>, dose: string) => of(limits, { dose }).map(([, , values]) => values);
    expect(context(mgPerKg("1", "2"), "15")).toMatchObject([{ context: "tenfold" }]);
    expect(context(mgPerKg("1", "2"), "0.15")).toMatchObject([{ context: "tenth" }]);
    // Where no highest dose is published, twice the lowest is still a dose, and more says nothing of the point.
    expect(context(mgPerKg("2", null), "0.3")).toMatchObject([{ context: "tenth" }]);
    expect(context(mgPerKg("2", null), "1")).toMatchObject([{ context: "" }]);
    expect(context(mgPerKg("2", null), "0.1")).toMatchObject([{ context: "" }]);
    expect(context(mgPerKg("1", "2"), "5")).toMatchObject([{ context: "" }]);
    expect(context(mgPerKg("1", "2"), "30")).toMatchObject([{ context: "" }]);
    // Without a least, half of the most is still a dose.
    expect(context(mgPerKg(null, "2"), "10")).toMatchObject([{ context: "tenfold" }]);
    expect(context(mgPerKg(null, "2"), "9")).toMatchObject([{ context: "" }]);
  });
});

describe("of several rules", () => {
  const row = (...regimens: Partial<Regimen>[]) => {
    const usual = { species: ["dog"], route: ["mouth"], weight: undefined };
    return { source: "the table", regimens: regimens.map((one) => rule({ ...usual, ...one } as Partial<Regimen>)) };
  };
  const inDog = (given: Case, more: Partial<Dosing> = {}) => {
    const one = dosing(given, more);
    const asked = { ...one.asked, species: "dog", planned: { ...one.asked.planned, route: "mouth" } };
    return { ...one, asked } as Dosing;
  };
  const told = (of: ReturnType<typeof row>, given: Case, more: Partial<Dosing> = {}) =>
    limitProblems(of as never, inDog(given, more)).map(({ code, at, values }) => [code, at.file, values]);
  const codes = (...args: Parameters<typeof told>) => told(...args).map(([code]) => code);

  test("it is enough to keep one", () => {
    const either = row(mgPerKg("1", "2"), mgPerKg("5", "6"));
    expect([codes(either, { dose: "1.5" }), codes(either, { dose: "5.5" })]).toEqual([[], []]);
    expect(codes(either, { dose: "3" })).toEqual(["dose-over-limit"]);
    expect(codes(row({ ...mgPerKg("1", "2"), species: ["cat"] as never }), { dose: "30" })).toEqual([]);
    expect(codes(row({ ...mgPerKg("1", "2"), route: ["skin"] as never }), { dose: "30" })).toEqual([]);
    expect(codes(row({ ...mgPerKg("1", "2"), forms: ["liquid"] as never }), { dose: "30" })).toEqual([]);
    expect(codes(row({ ...mgPerKg("1", "2"), strengths: ["20"] }), { dose: "30" })).toEqual([]);
    expect(codes(row({ ...mgPerKg("1", "2"), strengths: ["10"] }), { dose: "30" })).toEqual(["dose-over-limit"]);
  });

  test("the one that is broken in fewest ways is told, of two alike the one for every use", () => {
    const every = { least: 24, most: 24 } as Regimen["every"];
    const twice = row({ ...mgPerKg("1", "2"), every, source: "both" }, { ...mgPerKg("1", "2"), source: "dose" });
    expect(told(twice, { dose: "3" })).toMatchObject([["dose-over-limit", "dose", { source: "dose" }]]);
    const use = "pain" as Regimen["use"];
    const alike = row({ ...mgPerKg("1", "2"), use, source: "pain" }, { ...mgPerKg("1", "2"), source: "all" });
    expect(told(alike, { dose: "3" })).toMatchObject([["dose-over-limit", "dose", { source: "all" }]]);
    expect(told(alike, { dose: "2" })).toEqual([]);
  });

  test("what is usual is looked at only where nothing is published", () => {
    const usual = { ...mgPerKg("1", "2"), standing: "usual" as const };
    expect(codes(row(usual, mgPerKg("5", "6")), { dose: "1.5" })).toEqual(["dose-under-limit"]);
    expect(codes(row(usual), { dose: "3" })).toEqual(["dose-unusual"]);
  });

  test("one for the young holds where the animal is known to be young", () => {
    const young = row({ ...mgPerKg("1", "2"), months: { least: null, most: 6 } }, mgPerKg("5", "6"));
    expect(codes(young, { dose: "1.5", months: 4 })).toEqual([]);
    expect(codes(young, { dose: "1.5", months: null })).toEqual(["dose-under-limit"]);
    const grown = row({ ...mgPerKg("1", "2"), months: { least: 6, most: null } });
    expect(codes(grown, { dose: "1.5", months: null })).toEqual(["age-unknown"]);
  });

  test("one for a single use is told with that use, once for a course", () => {
    const pain = row({ ...mgPerKg("1", "2"), use: "pain" as Regimen["use"] });
    expect(told(pain, { dose: "2" })).toEqual([["labelled-for", "name", { medicine: "x", context: "pain", source }]]);
    const later = inDog({ dose: "2" });
    expect(told(pain, { dose: "2" }, { step: { ...later.step, path: ["next", 0] } })).toEqual([]);
  });

  test("no label covers what none is published for", () => {
    const labelled = (of: ReturnType<typeof row>) => {
      const { asked, form } = inDog({});
      return said(labelProblems(of as never, asked, form));
    };
    expect(labelled(row(mgPerKg("1", "2")))).toEqual([]);
    const not = [["not-labelled", "name", { medicine: "x", context: "dog", source: "the table" }]];
    expect(labelled(row({ ...mgPerKg("1", "2"), standing: "usual" }))).toEqual(not);
    expect(labelled(row())).toEqual(not);
    expect(limitProblems(row() as never, inDog({ dose: "30" }))).toEqual([]);
  });

  test("a dose that keeps none of them and would keep one in another unit is a slip of the unit", () => {
    const given = { medicine: "x", given: "20 mg/kg", other: "20 mg" };
    expect(told(row(mgPerKg("1", "2"), mgPerKg("3", "4")), { dose: "20" })).toEqual([
      ["dose-unit-doubtful", "dose", given],
    ]);
    // Kept by one rule as it is, and only its interval is not.
    const every = { least: 24, most: 24 } as Regimen["every"];
    expect(codes(row({ ...mgPerKg("19", "21"), every }, mgPerKg("1", "2")), { dose: "20" })).toEqual([
      "doses-too-often",
    ]);
  });
});

describe("the words of a rule", () => {
  const every = (least: number, most = least) => ({ every: { least, most } as Regimen["every"] });
  const here = (unit: string, value: string, hours = 12) => ({ unit, value, hours });

  test("are its bound, its unit and how often, and what that is here where the unit is another", () => {
    const limits = rule({ ...mgPerKg("1", "2"), ...every(12) });
    expect(ruleText(limits, "most", null)).toBe("2 mg/kg / 12 h");
    expect(ruleText(limits, "least", here("mg/kg", "1 mg/kg"))).toBe("1 mg/kg / 12 h");
    expect(ruleText(limits, "most", here("mg/lb", "0.91 mg/lb"))).toBe("2 mg/kg / 12 h (0.91 mg/lb)");
    expect(ruleText(rule({ ...mgPerKg("1", "2"), ...every(8, 12) }), "most", null)).toBe("2 mg/kg / 8-12 h");
    expect(ruleText(rule(mgPerKg("1", "2")), "most", null)).toBe("2 mg/kg");
  });

  test("of a dose by the day are by the day, and by the dose where there are several", () => {
    const limits = rule({ ...mgPerKg("1", "2", "day"), ...every(12) });
    expect(ruleText(limits, "most", null)).toBe("2 mg/kg/day");
    expect(ruleText(limits, "most", here("mg/kg", "1 mg/kg"))).toBe("2 mg/kg/day (1 mg/kg / 12 h)");
    expect(ruleText(limits, "most", here("mg/kg", "2 mg/kg", 24))).toBe("2 mg/kg/day");
  });

  test("of a dose without a most of its own are of its ceiling", () => {
    const limits = rule({ ...mgPerKg("1", null), ceiling: { most: "3" } as Regimen["ceiling"] });
    expect(ruleText(limits, "most", null)).toBe("3 mg/kg");
    expect(of(limits, "4")).toMatchObject([{ code: "dose-over-limit", values: { limit: "3 mg/kg" } }]);
  });

  const of = (limits: Regimen, dose: string) => doseOutside(limits, dosing({ dose }));
});
