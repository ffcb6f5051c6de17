import { isSupportedCountry, parsePhoneNumberFromString } from "libphonenumber-js/min";

const parsed = (typed: string, country: string | undefined) =>
  parsePhoneNumberFromString(typed, country !== undefined && isSupportedCountry(country) ? country : undefined);

/** "(312) 555-0142", typed in its country, as a profile has it: "+1 312 555 0142". What is no number stays as it is. */
export function withCountryCode(typed: string, country: string | undefined): string {
  const number = parsed(typed, country);
  return number?.isPossible() ? number.formatInternational() : typed;
}

/** The country of a number that says it, by its code. */
export const countryOfPhone = (phone: string): string | undefined => parsed(phone, undefined)?.country;

/** The number as it is dialled in the country. */
export const dialled = (phone: string, country: string | undefined): string =>
  parsed(phone, country)?.formatNational() ?? phone;

/** Whether a number of that country could look like this. */
export const looksRight = (phone: string, country: string | undefined): boolean =>
  parsed(phone, country)?.isValid() ?? false;
