import { describe, expect, it } from "vitest";
import { clockOf } from "../../src/cli/entry/clock-words.js";
import { collarLine } from "../../src/cli/entry/collar-line.js";
import { countries, countryOfMachine, currencyOf, zonesOf } from "../../src/cli/entry/country.js";
import { hoursLine } from "../../src/cli/entry/hours-line.js";
import { countryOfPhone, dialled, looksRight, withCountryCode } from "../../src/cli/entry/phone-line.js";

describe("a time of day", () => {
  it.each([
    ["9 am", "09:00"],
    ["12am", "00:00"],
    ["12 pm", "12:00"],
    ["6:30 p.m.", "18:30"],
    ["18h", "18:00"],
    ["8", "08:00"],
    ["23.15", "23:15"],
  ])("%s", (said, clock) => expect(clockOf(said)).toBe(clock));

  it.each(["13 pm", "0 am", "24", "8:60", "noon", ""])("%s is none", (said) => expect(clockOf(said)).toBeNull());
});

describe("opening hours", () => {
  it.each([
    ["8am-6pm", "08:00-18:00"],
    ["8-18", "08:00-18:00"],
    ["8:30 to 5:30 pm", "08:30-17:30"],
    ["8-12, 14-18", "08:00-12:00, 14:00-18:00"],
    ["8am - noon", "08:00-12:00"],
    ["9-12 noon", "09:00-12:00"],
    ["9 till 12", "09:00-12:00"],
    ["8:30am until 5pm", "08:30-17:00"],
    ["9-1pm", "09:00-13:00"],
    ["1pm-5pm and 6pm – 8 pm", "13:00-17:00, 18:00-20:00"],
    ["8-6", "08:00-18:00"],
    ["8:30-5.30", "08:30-17:30"],
    ["9-1 and 2-6.30", "09:00-13:00, 14:00-18:30"],
    ["9am-1pm, 2pm-6.30pm", "09:00-13:00, 14:00-18:30"],
    ["Closed", "closed"],
  ])("%s", (typed, hours) => expect(hoursLine(typed)).toBe(hours));

  it.each(["2-6", "1-5pm", "10-11pm", "18-8", "8am-8am", "08:00-06:00", "12-12"])(
    "%s could be read in two ways, or in none",
    (typed) => expect(hoursLine(typed)).toBe(typed),
  );
});

describe("a phone, in the country it is typed in", () => {
  // Numbers kept for examples: 555-0100 to 0199 (NANPA), 020 7946 0000 to 0999 (Ofcom).
  it.each([
    ["(312) 555-0142", "US", "+1 312 555 0142"],
    ["020 7946 0018", "GB", "+44 20 7946 0018"],
    ["+44 20 7946 0018", "US", "+44 20 7946 0018"],
    ["312 555", "US", "312 555"],
    ["312 555 0142", undefined, "312 555 0142"],
    ["ring us", "US", "ring us"],
  ])("%s in %s", (typed, country, whole) => expect(withCountryCode(typed, country)).toBe(whole));

  it("tells its country by its code, and is dialled without it at home", () => {
    expect([countryOfPhone("+44 20 7946 0018"), countryOfPhone("020 7946 0018")]).toEqual(["GB", undefined]);
    expect([dialled("+1 312 555 0142", "US"), dialled("no number", "US")]).toEqual(["(312) 555-0142", "no number"]);
  });

  it("is doubted where no number of the country looks like it: a digit short, or of another place", () => {
    const whole = withCountryCode("03 555 0187", "NZ");
    expect([whole, looksRight(whole, "NZ")]).toEqual(["+64 3 555 0187", true]);
    expect(looksRight(withCountryCode("03 555 018", "NZ"), "NZ")).toBe(false);
    expect([looksRight("+1 312 555 0142", "US"), looksRight("+44 20 7946 0018", "GB")]).toEqual([true, true]);
  });
});

it("a collar is measured from the collar line to the nose, as the question says", () => {
  for (const said of ["neck 24 cm, nose 11 cm", "neck 24 cm nose 11 cm", "24 cm, 11 cm"])
    expect(collarLine(said, [])).toEqual({ fields: { neck: "24 cm", length: "11 cm" }, unknown: null });
  expect(collarLine("neck 24 nose 11", []).fields).toEqual({ neck: "24", length: "11" });
  expect(collarLine("24 cm, chin 11 cm", []).unknown).toBe("chin 11 cm");
});

describe("a country", () => {
  // ISO 4217 by country, list one; Vietnam and Germany have one zone that people use, the United States many.
  it.each([
    ["US", "USD"],
    ["VN", "VND"],
    ["CH", "CHF"],
    ["BR", "BRL"],
    ["HR", "EUR"],
    ["EG", "EGP"],
  ])("%s pays in %s", (country, currency) => expect(currencyOf(country)).toBe(currency));

  it("pays with money this Node can name, and has a clock", () => {
    const known = new Set(Intl.supportedValuesOf("currency"));
    expect(countries().length).toBeGreaterThan(200);
    for (const country of countries()) {
      expect(zonesOf(country).length).toBeGreaterThan(0);
      const currency = currencyOf(country);
      if (currency !== null) expect([country, known.has(currency)]).toEqual([country, true]);
    }
    expect([currencyOf("XX"), currencyOf("toString"), zonesOf("no country")]).toEqual([null, null, []]);
  });

  it("is guessed from a clock that one country has alone, else from the language", () => {
    expect(countryOfMachine("America/Chicago", "de-DE")).toBe("US");
    expect(countryOfMachine("UTC", "de-AT")).toBe("AT");
    expect(countryOfMachine("UTC", "de")).toBeNull();
  });
});
