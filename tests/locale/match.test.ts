import { match as bestFit } from "@formatjs/intl-localematcher";
import { describe, expect, it } from "vitest";
import { chooseLanguage } from "#locale/choose.js";
import { matchFor, matchLanguage } from "#locale/match.js";

/** What is to be had when all nine are there. */
const all = ["ar", "de", "en", "en-GB", "es", "fr", "pt-BR", "vi", "zh-Hans"];

describe("the language we have that serves the one asked for", () => {
  it.each([
    // RFC 4647, 3.4: subtags are dropped from the end.
    ["es-MX", "es"],
    ["es-419", "es"],
    ["fr-CA", "fr"],
    ["de-AT-1996", "de"],
    ["ar-EG", "ar"],
    ["zh-Hans-SG", "zh-Hans"],
    ["en-US", "en"],
    // CLDR: likely subtags. Chinese of China and Singapore is written in Hans, of Taiwan and Hong Kong in Hant.
    ["zh", "zh-Hans"],
    ["zh-CN", "zh-Hans"],
    ["zh-SG", "zh-Hans"],
    ["zh-TW", null],
    ["zh-HK", null],
    ["zh-Hant", null],
    ["pt", "pt-BR"],
    ["pt-PT", "pt-BR"],
    ["pt-AO", "pt-BR"],
    // CLDR, languageMatching, $enUS.
    ["en-GB", "en-GB"],
    ["en-AU", "en-GB"],
    ["en-IE", "en-GB"],
    ["en-CA", "en"],
    ["en-PH", "en"],
    ["en", "en"],
    ["so", null],
    ["gsw", null],
    ["es-Hebr", "es"],
  ])("%s: %s", (asked, used) => expect(matchLanguage(asked, all)).toBe(used));

  it("is what CLDR's language matching chooses, as another implementation reads it", () => {
    const asked = [
      "es-MX",
      "fr-CA",
      "de-AT",
      "ar-EG",
      "zh",
      "zh-CN",
      "zh-SG",
      "pt",
      "pt-PT",
      "en-AU",
      "en-IN",
      "en-CA",
    ];
    for (const tag of [...asked, "en-US", "vi-VN", "en-ZA", "zh-Hans-MY", "fr-HT"]) {
      const theirs = bestFit([tag], all, "und", { algorithm: "best fit" });
      expect([tag, matchLanguage(tag, all) ?? "und"]).toEqual([tag, theirs]);
    }
  });

  it("a clinic's country settles which words, where the owner names none", () => {
    expect(["GB", "AU", "US", undefined].map((country) => matchFor("en", all, country))).toEqual([
      "en-GB",
      "en-GB",
      "en",
      "en",
    ]);
    expect(matchFor("en-US", all, "GB")).toBe("en");
    // Likely subtags of zh-US are Hant: the country of a clinic says nothing of how its owners write.
    expect(matchFor("zh", all, "US")).toBe("zh-Hans");
    expect(matchFor("pt", all, "PT")).toBe("pt-BR");
  });
});

describe("what stands in for a language we lack", () => {
  const chosen = (asked: string[], staff = "es") => {
    const { used, why } = chooseLanguage(asked, staff, all, "US");
    return [used, why];
  };
  it.each([
    [["es-MX"], "en", ["es", "asked"]],
    [["pt-PT"], "en", ["pt-BR", "nearest"]],
    [["so", "ar"], "es", ["ar", "later"]],
    [["zh-TW", "en"], "es", ["en", "later"]],
    [["so"], "es", ["es", "staff"]],
    [["so"], "fil", ["en", "last"]],
    [[], "es", ["es", "staff"]],
  ] as const)("%j, to a clinic that speaks %s: %j", (asked, staff, found) =>
    expect(chosen([...asked], staff)).toEqual(found),
  );
  it("the last of all is the English of the clinic's country", () =>
    expect(chooseLanguage(["so"], "cy", all, "GB").used).toBe("en-GB"));
});
