import { afterEach, describe, expect, it, vi } from "vitest";
import { datesOf } from "#locale/dates.js";
import { plainSpaces } from "#locale/spaces.js";

afterEach(() => vi.unstubAllEnvs());

const locales = ["en-US", "en-GB", "es-US", "es", "es-MX"];
const at = new Date(Date.UTC(2026, 2, 3, 9, 30));
const cldr = (tag: string, options: Intl.DateTimeFormatOptions) =>
  plainSpaces(new Intl.DateTimeFormat(tag, { timeZone: "UTC", ...options }).format(at));

describe("days and times are worded as CLDR words them", () => {
  it.each(locales)("%s", (tag) => {
    const dates = datesOf(tag);
    expect(dates.day("2026-03-03")).toBe(cldr(tag, { weekday: "long", month: "long", day: "numeric" }));
    expect(dates.wholeDay("2026-03-03")).toBe(cldr(tag, { dateStyle: "long" }));
    expect(dates.time("09:30")).toBe(cldr(tag, { hour: "numeric", minute: "2-digit" }));
    expect(dates.month("2026-03")).toBe(cldr(tag, { month: "long", year: "numeric" }));
    expect(dates.weekday(2, "long")).toBe(cldr(tag, { weekday: "long" }));
  });

  // Written out by hand, so that a change in the host's CLDR shows.
  it("in full", () => {
    expect(datesOf("en-US").dateTime("2026-03-03T09:30")).toBe("Tuesday, March 3 at 9:30 AM");
    expect(datesOf("es-US").dateTime("2026-03-03T09:30")).toBe("martes, 3 de marzo, 9:30 a.m.");
    expect(datesOf("es").dateTime("2026-03-03T16:05")).toBe("martes, 3 de marzo, 16:05");
    expect(datesOf("en-US").timeRange("08:00", "18:00")).toBe("8:00\u00a0AM – 6:00\u00a0PM");
  });
});

it("the first day of the week is the region's (CLDR weekData: Sunday in the US and Mexico, Monday in Spain)", () => {
  expect(["en-US", "es-MX", "es-ES", "en-GB"].map((tag) => datesOf(tag).weekStart)).toEqual([7, 7, 1, 1]);
});

it.each(["Pacific/Kiritimati", "America/Los_Angeles", "Africa/Cairo"])("the host's zone (%s) never shows", (zone) => {
  vi.stubEnv("TZ", zone);
  const dates = datesOf("en-US");
  expect(dates.day("2026-03-03")).toBe("Tuesday, March 3");
  expect(dates.time("00:15")).toBe("12:15 AM");
});
