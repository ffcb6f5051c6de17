import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { isolated } from "#locale/isolate.js";
import { openLocales } from "#locale/locales.js";
import { matchLanguage, regional } from "#locale/match.js";
import { numbersOf } from "#locale/numbers.js";
import { phonesOf } from "#locale/phones.js";
import { speak } from "#locale/voice.js";
import { MissingWords } from "#locale/words.js";

const json = (value: unknown) => JSON.stringify(value);
const units = {
  tablet_one: "{{value}} tablet",
  tablet_other: "{{value}} tablets",
  "tablet-part_5": "half a tablet ({{value}})",
  mL: "{{value}} mL",
};
const opened = openLocales({
  "locales/en/a.json": json({
    hello: "Hi {{who}}",
    dog_one: "{{count}} dog",
    dog_other: "{{count}} dogs",
    good_female: "good girl",
    good: "good",
  }),
  "locales/en/units.json": json(units),
  "locales/es/a.json": json({ hello: "Hola {{who}}" }),
  "locales/es-MX/a.json": json({ hello: "Qué tal {{who}}" }),
  "locales/en/problems/plan.json": json({ x: { what: "W", hint: "H" } }),
  "locales/en/problems/costs.json": json({ y: { what: "V", hint: "G" } }),
});
const locales = opened.value ?? expect.fail();

describe("languages", () => {
  it.each([
    ["es-MX", ["en", "es"], "es"],
    ["es-mx", ["es", "es-MX"], "es-MX"],
    ["zh-Hant-TW", ["zh", "en"], "zh"],
    ["ar", ["en", "es"], null],
    ["e", ["en"], null],
  ])("%s among %j is %s", (asked, have, found) => expect(matchLanguage(asked, have)).toBe(found));

  it("the clinic's country settles what the tag leaves open", () => {
    expect(regional("es", "US")).toBe("es-US");
    expect(regional("es-MX", "US")).toBe("es-MX");
    expect(regional("en", undefined)).toBe("en");
  });

  it("a language nobody put into words is answered in English, and the voice says so", () => {
    const voice = speak(locales, "fr", "US");
    expect([voice.language, voice.speaks, voice.asked, voice.region]).toEqual(["en", false, "fr", "en-US"]);
    expect(speak(locales, "es-MX").say("a:hello", { who: "Ana" })).toBe("Qué tal Ana");
    expect(speak(locales, "es-AR").say("a:hello", { who: "Ana" })).toBe("Hola Ana");
  });

  it("files of a folder are one namespace, and other files are left alone", () => {
    const voice = speak(locales, "en");
    expect([voice.say("problems:x.what"), voice.say("problems:y.hint")]).toEqual(["W", "G"]);
  });

  it("a broken file is reported by name, and every one of them", () => {
    const { value, problems } = openLocales({ "locales/en/a.json": "{", "locales/en/b.json": "[1]" });
    expect(value).toBeNull();
    expect(problems.map(({ code, at }) => [code, at.file])).toEqual([
      ["locale-syntax", "locales/en/a.json"],
      ["locale-syntax", "locales/en/b.json"],
    ]);
  });
});

describe("saying", () => {
  const voice = speak(locales, "en", "US");
  it("plural and sex pick the form", () => {
    expect([1, 2, 1200].map((count) => voice.say("a:dog", { count }))).toEqual(["1 dog", "2 dogs", "1200 dogs"]);
    expect(voice.say("a:good", { context: "female" })).toBe("good girl");
    expect(voice.say("a:good", { context: "male" })).toBe("good");
  });

  it("what is not there throws, and is never an empty string", () => {
    expect(() => voice.say("a:nothing")).toThrow(MissingWords);
    expect(() => voice.say("a:hello")).toThrow(MissingWords);
  });

  it("a value is never read again, whatever is in it", () => {
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string({ unit: "binary" }),
          fc.constantFrom("{{who}}", "$t(a:good)", "$&", "$1", "<b>", "{{{who}}}"),
        ),
        // A value in Arabic or Hebrew is kept to itself, and otherwise as it was.
        (who) => voice.say("a:hello", { who }) === `Hi ${isolated(who, "ltr")}`,
      ),
    );
  });
});

describe("numbers", () => {
  it("decimals keep every digit, with a leading nought and no trailing one (ISMP: 0.5, never .5 or 5.0)", () => {
    const { number } = numbersOf("en-US");
    expect(["0.5", "5.0", ".5", "12.345678901234567", "1000", "25000"].map(number)).toEqual([
      "0.5",
      "5",
      "0.5",
      "12.345678901234567",
      "1000",
      "25,000",
    ]);
    expect(numbersOf("es").number("0.5")).toBe("0,5");
  });

  it("money of any whole number of minor units is what Intl makes of the exact decimal", () => {
    for (const [tag, currency, places] of [
      ["en-US", "USD", 2],
      ["es-US", "USD", 2],
      ["es", "EUR", 2],
      ["en", "JPY", 0],
    ] as const) {
      const { money } = numbersOf(tag);
      const intl = new Intl.NumberFormat(tag, { style: "currency", currency });
      fc.assert(
        fc.property(fc.integer({ min: -99_999_999, max: 99_999_999 }), (minor) => {
          const digits = String(Math.abs(minor)).padStart(places + 1, "0");
          const decimal = places === 0 ? digits : `${digits.slice(0, -places)}.${digits.slice(-places)}`;
          const exact = `${minor < 0 ? "-" : ""}${decimal}` as Intl.StringNumericLiteral;
          return money(minor, currency).replace(/\s/g, "") === intl.format(exact).replace(/\s/g, "");
        }),
      );
    }
  });

  it("what is cut by hand is told in parts, what is measured in decimals", () => {
    const voice = speak(locales, "en", "US");
    const tablets = ["1", "2", "0.5", "1.50"].map((value) => voice.amount({ value, unit: "tablet" }));
    expect(tablets).toEqual(["1 tablet", "2 tablets", "half a tablet (½)", "1½ tablets"]);
    expect(voice.shortAmount({ value: "0.5", unit: "tablet" })).toBe("½ tablet");
    expect(voice.amount({ value: "0.5", unit: "mL" })).toBe("0.5 mL");
  });
});

it("a number at home is dialled as at home, one abroad with its country code", () => {
  // National and international forms of NANP and Mexican numbers as the ITU's E.123 shows them.
  expect(phonesOf("US")("+13125550142").replaceAll("\u00a0", " ")).toBe("(312) 555-0142");
  expect(phonesOf("MX")("+13125550142").replaceAll("\u00a0", " ")).toBe("+1 312 555 0142");
  expect(phonesOf("CA")("+13125550142").replaceAll("\u00a0", " ")).toBe("(312) 555-0142");
  expect(phonesOf(undefined)("+13125550142").replaceAll("\u00a0", " ")).toBe("+1 312 555 0142");
});
