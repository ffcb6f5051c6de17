import { describe, expect, test } from "vitest";
import { clinicDays } from "../../src/compute/calendar/clinic-days.js";
import { holidaysIn } from "../../src/compute/calendar/holidays.js";
import { everyDay, noSunday, planOf, run } from "./help.js";

const holidays = (country: string, region?: string, open: string[] = []) => ({
  clinic: { holidays: { country, ...(region ? { region } : {}), open } },
});
const inYear = (country: string, year: number, region?: string) =>
  holidaysIn(planOf({ course: [], ...holidays(country, region) }), year);

describe("public holidays against published lists", () => {
  // From memory: 5 U.S.C. 6103(a), the federal holidays, with their days in 2026 (Independence Day is a Saturday).
  test("United States, 2026", () => {
    const days = [...inYear("US", 2026).keys()];
    for (const day of ["01-01", "01-19", "02-16", "05-25", "06-19", "07-04", "09-07", "11-11", "11-26", "12-25"])
      expect(days).toContain(`2026-${day}`);
  });

  // From memory: gov.uk, bank holidays in England and Wales, 2026: 28 December stands in for 26, a Saturday.
  test("England, 2026", () => {
    const days = [...inYear("GB", 2026, "ENG").keys()];
    for (const day of ["01-01", "04-03", "04-06", "05-04", "05-25", "08-31", "12-25", "12-28"])
      expect(days).toContain(`2026-${day}`);
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
  test("a region adds its own", () => {
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
