import { fr, ptBR } from "date-fns/locale";
import { afterEach, describe, expect, it, vi } from "vitest";
import { datesOf } from "#locale/dates.js";
import { plainSpaces } from "#locale/spaces.js";
import { speak } from "#locale/voice.js";
import { locales as shipped } from "../compose/shipped.js";

afterEach(() => vi.unstubAllEnvs());

const locales = ["en-US", "en-GB", "es-US", "es", "es-MX"];
const at = new Date(Date.UTC(2026, 2, 3, 9, 30));
const cldr = (tag: string, options: Intl.DateTimeFormatOptions) =>
  broken(plainSpaces(new Intl.DateTimeFormat(tag, { timeZone: "UTC", ...options }).format(at)));
/** Where any space may break: CLDR tells the words, and not where they stay together. */
const broken = (words: string) => words.replaceAll("\u00a0", " ");

describe("days and times are worded as CLDR words them", () => {
  it.each(locales)("%s", (tag) => {
    const dates = datesOf(tag);
    expect(broken(dates.day("2026-03-03"))).toBe(cldr(tag, { weekday: "long", month: "long", day: "numeric" }));
    expect(broken(dates.wholeDay("2026-03-03"))).toBe(cldr(tag, { dateStyle: "long" }));
    expect(broken(dates.time("09:30"))).toBe(cldr(tag, { hour: "numeric", minute: "2-digit" }));
    expect(broken(dates.month("2026-03"))).toBe(cldr(tag, { month: "long", year: "numeric" }));
    expect(broken(dates.weekday(2, "long"))).toBe(cldr(tag, { weekday: "long" }));
  });

  // Written out by hand, so that a change in the host's CLDR shows.
  it("in full", () => {
    expect(datesOf("en-US").dateTime("2026-03-03T09:30")).toBe("Tuesday, March\u00a03 at 9:30\u00a0AM");
    expect(datesOf("es-US").dateTime("2026-03-03T09:30")).toBe("martes, 3\u00a0de\u00a0marzo, 9:30\u00a0a.m.");
    expect(datesOf("es").dateTime("2026-03-03T16:05")).toBe("martes, 3\u00a0de\u00a0marzo, 16:05");
    expect(datesOf("ar-EG").time("09:30")).toBe("٩:٣٠\u00a0ص");
    expect(datesOf("en-US").timeRange("08:00", "18:00")).toBe("8:00\u00a0AM – 6:00\u00a0PM");
  });
});

it("the first day of the week is the region's (CLDR weekData: Sunday in the US and Mexico, Monday in Spain)", () => {
  expect(["en-US", "es-MX", "es-ES", "en-GB"].map((tag) => datesOf(tag).weekStart)).toEqual([7, 7, 1, 1]);
});

// CLDR timeData and weekData by region: a clock of 12 or 24 hours, and the day a week begins with (1 Monday, 7 Sunday).
it.each([
  ["en-US", "12-hour", 7],
  ["es-US", "12-hour", 7],
  ["en-GB", "24-hour", 1],
  ["es-ES", "24-hour", 1],
  ["fr-FR", "24-hour", 1],
  ["de-DE", "24-hour", 1],
  ["pt-BR", "24-hour", 7],
  ["zh-Hans-CN", "24-hour", 1],
  ["vi-VN", "24-hour", 1],
  ["ar-EG", "12-hour", 6],
])("%s has a %s clock and weeks that begin on day %i, as Intl has them", (tag, clock, weekStart) => {
  const dates = datesOf(tag);
  const { hour12 } = new Intl.DateTimeFormat(tag, { hour: "numeric" }).resolvedOptions();
  expect(hour12).toBe(clock === "12-hour");
  const [morning, evening] = ["08:05", "20:05"].map((time) =>
    dates
      .time(time)
      .normalize("NFKC")
      .replace(/\p{Nd}/gu, digit),
  );
  expect(/20/.test(evening ?? "")).toBe(clock === "24-hour");
  expect(evening).not.toBe(morning);
  expect(dates.weekStart).toBe(weekStart);
  // Node 20 has it as a getter, later ones as a method.
  const locale = new Intl.Locale(tag) as Intl.Locale & {
    weekInfo?: { firstDay: number };
    getWeekInfo?: () => { firstDay: number };
  };
  expect((locale.getWeekInfo?.() ?? locale.weekInfo)?.firstDay).toBe(weekStart);
});

/** A digit of any script as an ASCII one: those of a script follow each other from nought. */
const digit = (given: string): string => {
  const code = given.codePointAt(0) ?? 0;
  return String(code < 128 ? code - 48 : (code - 0x660) % 16);
};

it.each(["Pacific/Kiritimati", "America/Los_Angeles", "Africa/Cairo"])("the host's zone (%s) never shows", (zone) => {
  vi.stubEnv("TZ", zone);
  const dates = datesOf("en-US");
  expect(dates.day("2026-03-03")).toBe("Tuesday, March\u00a03");
  expect(dates.time("00:15")).toBe("12:15\u00a0AM");
});

// The parts and their order are those of Intl; a space that may break is written " ", one that may not "\u00a0".
it.each([
  ["en-US", "Tue, Mar\u00a03"],
  ["en-GB", "Tue 3\u00a0Mar"],
  ["es-US", "mar, 3\u00a0de\u00a0mar"],
  ["de-DE", "Di., 3.\u00a0März"],
  ["fr-FR", "mar. 3\u00a0mars"],
  ["pt-BR", "ter., 3\u00a0de\u00a0mar."],
  ["vi-VN", "Thứ\u00a03, 3\u00a0thg\u00a03"],
  ["zh-CN", "3月3日周二"],
])("a day in a narrow column breaks once in %s", (tag, words) =>
  expect(datesOf(tag).shortDay("2026-03-03")).toBe(words),
);

it("a day of the week in a narrow column is the short name, in Arabic the long one without its article", () => {
  const week = (tag: string) => [1, 4, 7].map((number) => datesOf(tag).weekdayInColumn(number));
  expect(week("en-US")).toEqual(["Mon", "Thu", "Sun"]);
  expect(week("de-DE")).toEqual(["Mo", "Do", "So"]);
  expect(week("ar-US")).toEqual(["اثنين", "خميس", "أحد"]);
  expect(datesOf("ar-US").weekday(4, "short")).toBe("الخميس");
});

// Portuguese: Manual de Redação da Presidência da República, "1º de junho" (from memory). French and Portuguese: date-fns.
it.each([
  ["fr-FR", "mardi 1er décembre", "1er déc.", fr],
  ["pt-BR", "terça-feira, 1º de dezembro", "1º de dez.", ptBR],
])("%s counts the first of a month and no other day", (tag, long, short, reference) => {
  const voice = speak(shipped, tag);
  const plain = (words: string) => words.replaceAll("\u00a0", " ");
  expect(plain(voice.day("2026-12-01"))).toBe(long);
  expect(plain(voice.shortDate("2026-12-01"))).toBe(short);
  expect(long.split(" ")).toContain(reference.localize.ordinalNumber(1, { unit: "date" }));
  expect(plain(voice.dateTime("2026-12-01T01:01"))).toContain(short.split(" ")[0]);
  expect(plain(voice.day("2026-12-11"))).toContain("11 ");
  expect(voice.dayNumber("2026-12-01")).toBe("1");
  expect(voice.month("2026-12")).not.toContain("1");
});
