/** A slip of a factor of ten is never printed without a word, whichever rule of the table the medicine keeps. */
import { Decimal } from "decimal.js";
import { describe, expect, test } from "vitest";
import type { Regimen } from "#tables/medicines.js";
import { doses, type Setting, table, type Written } from "./help.js";

const weights = { dog: ["2.6", "8", "24.6", "48"], cat: ["2.6", "4.2", "6.5"] };
const pound = "0.45359237";

/**
 * What of a medicine with this rule goes home: a liquid of a strength that 10 mL/kg never is needed of, or what it must be.
 * Insulin comes in whole units with a syringe of its own (forms.test.ts slips it).
 */
const forms = ({ route, forms: only, dose }: Regimen) =>
  route[0] === "ear" || dose.unit.startsWith("IU") ? null : only?.includes("tablet") ? "tablet" : "liquid";

const toKg = (limit: { value: string; unit: string }) =>
  new Decimal(limit.value).times(limit.unit === "lb" ? pound : 1);

const rules = table.flatMap(({ id, regimens }) => regimens.map((regimen, i) => ({ id, regimen, i })));
const cases = rules.flatMap(({ id, regimen, i }) =>
  regimen.species.flatMap((species) =>
    weights[species]
      .filter((kg) => !regimen.weight?.least || toKg(regimen.weight.least).lte(kg))
      .filter((kg) => !regimen.weight?.most || toKg(regimen.weight.most).gte(kg))
      .flatMap((kg) =>
        [regimen.dose.least, regimen.dose.most]
          .filter((bound) => bound !== null)
          .map((bound) => ({ title: `${id} ${i} ${species} ${kg} kg ${bound}`, id, regimen, species, kg, bound })),
      ),
  ),
);

function order(
  regimen: Regimen,
  bound: string,
  kg: string,
  factor: number,
  as: "dose" | "give",
): Written["dose"] & object {
  const hours = regimen.every?.most ?? 24;
  const value = new Decimal(bound).times(factor).times(regimen.dose.per === "day" ? hours / 24 : 1);
  const unit = regimen.dose.unit;
  if (as === "dose") return { value: value.toString(), unit };
  const perKg = unit === "mg/kg" ? kg : unit === "mg/lb" ? new Decimal(kg).div(pound) : 1;
  return { value: value.times(perKg).toString(), unit: "mg" };
}

/** The strength is chosen so that the right dose is one tablet or a millilitre. */
function written(one: (typeof cases)[number], factor: number, as: "dose" | "give"): Written {
  const { regimen, bound, kg, id } = one;
  const right = order(regimen, bound, kg, 1, "give").value;
  const kind = forms(regimen);
  const strength =
    kind === "tablet"
      ? { tablet: { value: right, unit: "mg" as const }, splits: "quarters" as const }
      : { liquid: { value: right, unit: "mg/mL" as const }, syringe: { value: "0.1", unit: "mL" as const } };
  const amount =
    as === "dose"
      ? { dose: order(regimen, bound, kg, factor, "dose") }
      : { give: { value: String(factor), unit: kind === "tablet" ? ("tablet" as const) : ("mL" as const) } };
  const days = regimen.doses?.most ?? regimen.days?.least ?? regimen.days?.most ?? 5;
  const hours = regimen.every?.most ?? 24;
  return {
    name: id,
    route: regimen.route[0] ?? "mouth",
    every: hours === 10 ? "8 h" : `${hours} h`,
    for: { value: String(hours >= 24 || regimen.doses ? days : Math.min(days, 30)), unit: "day" },
    "last given": "not given",
    ...strength,
    ...amount,
  };
}

/** Of the right age for the rule. */
const born = ({ months }: Regimen) => (months?.most ? "2025-11-15" : "2019-05");
const problemsOf = (one: (typeof cases)[number], factor: number, as: "dose" | "give") => {
  const setting: Setting = { species: one.species, weight: { value: one.kg, unit: "kg" }, born: born(one.regimen) };
  return doses([written(one, factor, as)], setting).problems;
};
/** What is said of the amount, and not of a label or of a made-up strength. */
const beside = [
  "strength-unlisted",
  "not-labelled",
  "labelled-for",
  "days-under-limit",
  "days-not-borne-out",
  "may-hold-poison",
  "medicine-unknown",
];
const aboutAmount = (problems: ReturnType<typeof problemsOf>) =>
  problems.map(({ code }) => code).filter((code) => !beside.includes(code));

const measured = cases.filter(({ regimen }) => forms(regimen) !== null);

describe.each(["dose", "give"] as const)("written as %s", (as) => {
  test.each(measured)("$title: as published, nothing is asked of the amount", (one) => {
    const per = one.regimen.dose.per === "day" && one.regimen.every?.most === 10;
    if (!per) expect(aboutAmount(problemsOf(one, 1, as))).toEqual([]);
  });

  test.each(measured)("$title: ten times is asked about", (one) => {
    expect(aboutAmount(problemsOf(one, 10, as))).not.toEqual([]);
  });

  test.each(measured)("$title: a tenth is asked about", (one) => {
    expect(aboutAmount(problemsOf(one, 0.1, as))).not.toEqual([]);
  });
});

describe("a slip in the strength", () => {
  const sold = table.flatMap(({ id, strengths }) =>
    strengths.flatMap(({ form, unit, values }) => values.map((value) => ({ id, form, unit, value, values }))),
  );

  test.each(sold)("$id $form $value $unit", ({ id, form, unit, value, values }) => {
    for (const factor of [10, 0.1]) {
      const slipped = new Decimal(value).times(factor).toString();
      if (values.includes(slipped)) continue;
      const strength = { value: slipped, unit };
      const insulin = form === "insulin" ? { syringe: `U-${value}` as "U-40" } : {};
      const codes = doses([
        { name: id, [form]: strength, dose: { value: "100", unit: "mg" }, ...insulin },
      ]).problems.map(({ code }) => code);
      const told = ["strength-unlisted", "strength-too-strong", "syringe-mismatch"];
      expect(codes.some((code) => told.includes(code))).toBe(true);
    }
  });
});
