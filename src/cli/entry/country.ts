import countryToCurrency from "country-to-currency";
import { getCountries } from "libphonenumber-js/min";

/** Every country that has phones, ISO 3166-1: "US". */
export const countries = (): string[] => [...getCountries()].filter((country) => zonesOf(country).length > 0);

/** Its time zones; Node 20 has them as a property, later ones as a method, and the library types know neither. */
export function zonesOf(country: string): string[] {
  type WithZones = { timeZones?: string[]; getTimeZones?: () => string[] };
  if (!/^[A-Z]{2}$/.test(country)) return [];
  const locale = new Intl.Locale(`und-${country}`) as unknown as WithZones;
  return [...new Set(locale.getTimeZones?.() ?? locale.timeZones ?? [])];
}

/** What it pays with, ISO 4217: "USD"; null where nobody knows. */
export const currencyOf = (country: string): string | null =>
  Object.hasOwn(countryToCurrency, country) ? countryToCurrency[country as keyof typeof countryToCurrency] : null;

/** Where letters are written on 8½ by 11 inches; A4 everywhere else. CLDR, measurement data, paper size (from memory). */
const letterPaper = new Set("BZ CA CL CO CR GT MX NI PA PH PR SV US VE".split(" "));
export const paperOf = (country: string): "letter" | "a4" => (letterPaper.has(country) ? "letter" : "a4");

/** Where a machine stands: in the country whose clock it has, or else where its language is of. */
export function countryOfMachine(zone: string, language: string): string | null {
  const [only, ...others] = countries().filter((country) => zonesOf(country).includes(zone));
  return only !== undefined && others.length === 0 ? only : (new Intl.Locale(language).region ?? null);
}
