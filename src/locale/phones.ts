import { getCountryCallingCode, isSupportedCountry, parsePhoneNumberFromString } from "libphonenumber-js/min";

/** "+13125550142" as it is dialled in the clinic's country, "(312) 555-0142"; elsewhere with its country code. */
export const phonesOf = (country: string | undefined) => (e164: string) => {
  const number = parsePhoneNumberFromString(e164);
  if (!number) return e164;
  const home = country && isSupportedCountry(country) ? getCountryCallingCode(country) : undefined;
  const text = number.countryCallingCode === home ? number.formatNational() : number.formatInternational();
  return text.replaceAll(" ", "\u00a0");
};
