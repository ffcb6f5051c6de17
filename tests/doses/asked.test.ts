/** What of a plan bears on each of its medicines. Discharge is at 16:30 on 2026-03-02 unless said. */
import { describe, expect, test } from "vitest";
import { askedOf } from "#compute/doses/asked.js";
import { planWith, q, type Setting, type Written } from "./help.js";

const tablets: Written = { name: "x", tablet: q("5 mg"), give: q("1 tablet") };
const asked = (written: Partial<Written> = {}, setting: Setting = {}) =>
  askedOf(planWith([{ ...tablets, ...written }], setting))[0];

describe("the id of a medicine", () => {
  const ids = (...names: string[]) =>
    askedOf(planWith(names.map((name) => ({ ...tablets, name })))).map(({ id }) => id);

  test("is its name in plain letters, numbered from the second of the same on", () => {
    expect(ids("Moon flower", "Ángel 5 mg", "moon-flower", "x", "MOON FLOWER")).toEqual([
      "moon-flower",
      "angel-5-mg",
      "moon-flower-2",
      "x",
      "moon-flower-3",
    ]);
  });

  test("is never empty", () => expect(ids("+++", "-")).toEqual(["medicine", "medicine-2"]));
});

describe("the age", () => {
  const months = (born: string | undefined) => asked({}, { born })?.months;

  // The latest birth that a year or a month allows: the last day of it.
  test("is the fewest whole months that what is known of the birth allows", () => {
    expect(months("2025")).toBe(2);
    expect(months("2024")).toBe(14);
    expect(months("2025-12")).toBe(2);
    expect(months("2025-06")).toBe(8);
    expect(months("2025-06-02")).toBe(9);
    expect(months("2025-06-03")).toBe(8);
    expect(months(undefined)).toBeNull();
  });
});

describe("the rest", () => {
  test("is of the animal, the clinic and the household", () => {
    const household = { morning: "07:00", evening: "19:00" };
    const plan = planWith([tablets], { species: "cat", sex: "female", weight: q("10 lb"), zone: "Europe/Madrid" });
    expect(askedOf({ ...plan, household })[0]).toMatchObject({
      species: "cat",
      sex: "female",
      zone: "Europe/Madrid",
      household,
      staffLanguage: plan.clinic.language,
      discharged: "2026-03-02T16:30",
    });
    expect(asked({}, { weight: q("10 lb") })?.kg.toString()).toBe("4.5359237");
  });

  test("is of the paper that began it", () => {
    expect(asked({ started: "2026-02-27T10:00" })?.discharged).toBe("2026-02-27T10:00");
  });

  test("takes the clinic's usual times where the plan has none, and ours where the clinic has none", () => {
    const plan = planWith([tablets]);
    const { household: _, ...unsaid } = plan;
    const usual = { morning: "07:30", evening: "19:30" };
    const of = (clinic: typeof plan.clinic) => askedOf({ ...unsaid, clinic })[0]?.household;
    expect(of({ ...plan.clinic, household: usual })).toEqual(usual);
    expect(of({ ...plan.clinic, household: undefined })).toEqual({ morning: "08:00", evening: "20:00" });
  });
});
