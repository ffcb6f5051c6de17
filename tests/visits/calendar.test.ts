import { describe, expect, test } from "vitest";
import { clinicDays } from "../../src/compute/calendar/clinic-days.js";
import { holidaysIn } from "../../src/compute/calendar/holidays.js";
import { everyDay, noSunday, planOf, run } from "./help.js";

const holidays = (country: string, region?: string, open: string[] = []) => ({
  clinic: { holidays: { country, ...(region ? { region } : {}), open } },
});
const inYear = (country: string, year: number, region?: string) =>
  holidaysIn(planOf({ course: [], ...holidays(country, region) }), year);

/** The days of a published list are all ours; more are only the weekend days that a listed weekday stands in for. */
function agrees(ours: string[], published: string[]) {
  expect(published.filter((day) => !ours.includes(day))).toEqual([]);
  const weekend = (day: string) => [0, 6].includes(new Date(`${day}T12:00Z`).getUTCDay());
  expect(ours.filter((day) => !published.includes(day) && !weekend(day))).toEqual([]);
}

const dates = (year: number, ...days: string[]) => days.map((day) => `${year}-${day}`);

describe("public holidays against published lists", () => {
  /**
   * US Office of Personnel Management, Federal Holidays, 2023 (5 U.S.C. 6103(a)). Veterans Day is its own day, a Saturday:
   * only federal staff have the Friday before it (6103(b)).
   */
  test("United States, 2023", () => {
    const published = [
      "01-02",
      "01-16",
      "02-20",
      "05-29",
      "06-19",
      "07-04",
      "09-04",
      "10-09",
      "11-11",
      "11-23",
      "12-25",
    ];
    agrees([...inYear("US", 2023).keys()], dates(2023, ...published));
  });

  // https://www.gov.uk/bank-holidays, England and Wales; 28 December 2026 stands in for 26, a Saturday.
  test.each([
    [2025, ["01-01", "04-18", "04-21", "05-05", "05-26", "08-25", "12-25", "12-26"]],
    [2026, ["01-01", "04-03", "04-06", "05-04", "05-25", "08-31", "12-25", "12-28"]],
  ])("England, %i", (year, published) => {
    agrees([...inYear("GB", year, "ENG").keys()], dates(year, ...published));
  });

  // BOE-A-2024-21316, 18 October 2024: Resolución de la Dirección General de Trabajo, fiestas laborales para 2025.
  const spain = ["01-01", "01-06", "04-18", "05-01", "08-15", "11-01", "12-06", "12-08", "12-25"];
  test("Spain, Catalonia, 2025: a region adds its own", () => {
    const catalonia = [...inYear("ES", 2025, "CT").keys()];
    agrees(catalonia, dates(2025, ...spain, "04-21", "06-24", "09-11", "12-26"));
    const nation = inYear("ES", 2025);
    expect(nation.has("2025-09-11")).toBe(false);
  });

  /** Of the twelve days of the same list for Madrid one was decided for that year: a clinic there writes it under closed. */
  test("Spain, Madrid, 2025: a day decided for one year only is not known", () => {
    const ours = inYear("ES", 2025, "MD");
    const published = dates(2025, ...spain, "04-17", "05-02", "07-25");
    expect(published.filter((day) => !ours.has(day))).toEqual(["2025-07-25"]);
  });

  // From memory: article 74 of the Mexican federal labour law, 2026: first Monday of February, third of March ...
  test("Mexico, 2026, by the names the owner reads", () => {
    const mexico = inYear("MX", 2026);
    for (const day of ["01-01", "02-02", "03-16", "05-01", "09-16", "11-16", "12-25"])
      expect([...mexico.keys()]).toContain(`2026-${day}`);
    const named = holidaysIn(planOf({ course: [], language: "es", ...holidays("MX") }), 2026);
    expect(named.get("2026-12-25")).toBe("Navidad");
  });

  // From memory: Illinois, 205 ILCS 630/17: Lincoln's birthday, 12 February, is a holiday there and not in the nation.
  test("a state of the United States adds its own", () => {
    expect(inYear("US", 2026).has("2026-02-12")).toBe(false);
    expect(inYear("US", 2026, "IL").has("2026-02-12")).toBe(true);
  });
});

describe("what a day is like", () => {
  test("a closure stands before a holiday, a holiday before the week", () => {
    const plan = planOf({
      course: [],
      hours: noSunday,
      clinic: {
        holidays: { country: "US", open: ["2026-06-19"] },
        closed: [{ from: "2026-07-03", to: "2026-07-05", name: "Moving house" }, "2026-08-01"],
      },
    });
    const day = clinicDays(plan);
    expect(day("2026-07-04").closed).toEqual({ reason: "closure", name: "Moving house" });
    expect(day("2026-08-01").closed).toEqual({ reason: "closure", name: null });
    expect(day("2026-05-25").closed).toEqual({ reason: "holiday", name: "Memorial Day" });
    expect(day("2026-08-02").closed).toEqual({ reason: "weekly", name: null });
    expect(day("2026-06-19").closed).toBeNull();
    expect(day("2026-08-03")).toEqual({ closed: null, hours: everyDay.monday, partner: null, away: [] });
  });

  test("a visit is not put on a holiday, and the holiday is named", () => {
    const given = { course: ["recheck day 3"], discharged: "2026-05-22T10:00", ...holidays("US") };
    expect(run(given).problems).toMatchObject([{ code: "closed-for", values: { closure: "Memorial Day" } }]);
    expect(run({ ...given, course: ["recheck day 3-4"] }).value).toMatchObject({
      visits: [{ earliest: "2026-05-26", latest: "2026-05-26" }],
      closed: [{ day: "2026-05-25", reason: "holiday", name: "Memorial Day" }],
    });
  });

  test.each([
    ["XX", undefined],
    ["US", "ZZ"],
  ])("holidays of %s %s are not known", (country, region) => {
    expect(run({ course: [], ...holidays(country, region) }).problems).toMatchObject([
      { code: "holiday-place-unknown", severity: "stop", values: { given: region ?? country } },
    ]);
  });
});
