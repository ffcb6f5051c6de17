import { describe, expect, it } from "vitest";
import { datesOf } from "#locale/dates.js";
import { languageName } from "#locale/language-name.js";
import { numbersOf } from "#locale/numbers.js";
import { plainSpaces } from "#locale/spaces.js";
import { speak } from "#locale/voice.js";
import { locales } from "../compose/shipped.js";

/** Every language we have, as a clinic of the United States, of Great Britain and of its own country writes it. */
const tags = locales.tags.flatMap((tag) => [tag, ...["US", "GB"].map((country) => [tag, country] as const)]);
const voices = tags.map((one) => (typeof one === "string" ? speak(locales, one) : speak(locales, ...one)));

const at = new Date(Date.UTC(2026, 2, 3, 9, 30));
/** Where any space may break: CLDR tells the words, and not where they stay together. */
const broken = (words: string) => words.replaceAll("\u00a0", " ");
const bare = (text: string) => text.replace(/[\u2066-\u2069]/g, "");

describe.each(voices.map((voice) => [voice.region, voice] as const))("%s, by Intl", (region, voice) => {
  const date = (options: Intl.DateTimeFormatOptions) =>
    broken(
      plainSpaces(new Intl.DateTimeFormat(region, { timeZone: "UTC", calendar: "gregory", ...options }).format(at)),
    );

  it("days, times and months", () => {
    expect(broken(voice.day("2026-03-03"))).toBe(date({ weekday: "long", month: "long", day: "numeric" }));
    expect(broken(voice.wholeDay("2026-03-03"))).toBe(date({ dateStyle: "long" }));
    expect(broken(voice.time("09:30"))).toBe(date({ hour: "numeric", minute: "2-digit" }));
    expect(broken(voice.month("2026-03"))).toBe(date({ month: "long", year: "numeric" }));
    expect([1, 2, 3, 4, 5, 6, 7].map((day) => broken(voice.weekday(day, "short")))).toEqual(
      [2, 3, 4, 5, 6, 7, 8].map((day) =>
        new Intl.DateTimeFormat(region, { timeZone: "UTC", weekday: "short" }).format(new Date(Date.UTC(2026, 2, day))),
      ),
    );
  });

  it("numbers, money and lists", () => {
    for (const number of ["0.5", "1000", "25000", "12.25"])
      expect(voice.number(number)).toBe(
        new Intl.NumberFormat(region, { maximumFractionDigits: 20, useGrouping: "min2" }).format(Number(number)),
      );
    for (const [minor, currency] of [
      [4800, "USD"],
      [123456, "EUR"],
      [-50, "GBP"],
    ] as const)
      expect(bare(voice.money(minor, currency))).toBe(
        plainSpaces(new Intl.NumberFormat(region, { style: "currency", currency }).format(minor / 100)),
      );
    for (const [join, type] of [
      ["and", "conjunction"],
      ["or", "disjunction"],
    ] as const)
      expect(voice.list(["1", "2", "3"], join)).toBe(new Intl.ListFormat(region, { type }).format(["1", "2", "3"]));
  });

  it("the name of every language we have", () => {
    for (const tag of locales.tags)
      expect(languageName(tag, region)).toBe(new Intl.DisplayNames([region], { type: "language" }).of(tag));
  });

  it("a count is told in each plural CLDR has for it", () => {
    const rules = new Intl.PluralRules(voice.language);
    for (const count of [0, 1, 2, 3, 6, 11, 100, 101, 1_000_000]) {
      const said = voice.message("handout:calendar.trips", { count });
      expect(said).not.toBe("");
      const kept = locales.messages[voice.language]?.["handout"] as { calendar?: Record<string, string> } | undefined;
      const own = kept?.calendar?.[`trips_${rules.select(count)}`];
      if (own !== undefined) expect(said).toBe(own);
    }
  });
});

// Written out by hand, so that a change in the host's CLDR shows.
it.each([
  ["en-GB", "Tuesday 3 March at 9:30", "08:00–18:00", "US$48.00", "0.5"],
  ["de-US", "Dienstag, 3. März um 9:30", "08:00–18:00 Uhr", "48,00\u00a0$", "0,5"],
  ["fr-US", "mardi 3 mars à 9:30", "08:00 – 18:00", "48,00\u00a0$US", "0,5"],
  ["pt-BR", "terça-feira, 3 de março às 9:30", "08:00 – 18:00", "US$\u00a048,00", "0,5"],
  ["zh-Hans-US", "3月3日星期二 9:30", "08:00–18:00", "US$48.00", "0.5"],
  ["vi-US", "lúc 9:30 Thứ Ba, 3 tháng 3", "08:00–18:00", "48,00\u00a0US$", "0,5"],
  ["ar-US", "الثلاثاء، 3 مارس في 9:30 ص", "8:00 ص – 6:00 م", "\u200f48.00\u00a0\u2066US$\u2069", "0.5"],
  ["ar-EG", "الثلاثاء، ٣ مارس في ٩:٣٠ ص", "٨:٠٠ ص – ٦:٠٠ م", "\u200f٤٨٫٠٠\u00a0\u2066US$\u2069", "٠٫٥"],
])("%s in full", (tag, when, hours, money, half) => {
  const dates = datesOf(tag);
  expect(dates.dateTime("2026-03-03T09:30").replaceAll("\u00a0", " ")).toBe(when);
  expect(dates.timeRange("08:00", "18:00").replaceAll("\u00a0", " ")).toBe(hours);
  expect(numbersOf(tag).money(4800, "USD")).toBe(money);
  expect(numbersOf(tag).number("0.5")).toBe(half);
});
