import { parsePhoneNumberFromString } from "libphonenumber-js";
import type { Language } from "#index.js";
import type { ClinicAnswers } from "./answers.js";
import type { Moment, Option, Question } from "./interview.js";
import { listed } from "./said-fields.js";

type ClinicQuestion = Question<ClinicAnswers, unknown>;
type ClinicMoment = Moment<ClinicAnswers, unknown>;

const first = (typed: readonly string[]) => typed[0]?.trim() ?? "";

/** The questions of a clinic profile. zone: that of this machine; staffLanguage: that of its system. */
export function clinicQuestions(languages: readonly Language[], zone: string, staffLanguage: string): ClinicQuestion[] {
  const ask = (context: string, field: keyof ClinicAnswers, more: Partial<ClinicQuestion> = {}): ClinicQuestion => ({
    context,
    fields: [field],
    flags: [flags[field]],
    kind: "text",
    needed: true,
    read: (typed) => ({ [field]: first(typed) }),
    ...more,
  });
  return [
    ask("clinic-name", "name", { example: "Juniper Row Animal Clinic" }),
    ask("clinic-address", "address", {
      example: "18 Juniper Row; Riverbend, IL 60000",
      read: (typed) => ({ address: listed(first(typed)) }),
    }),
    ask("clinic-phone", "phone", {
      example: "+1 312 555 0142",
      read: (typed) => ({ phone: first(typed), ...countryOf(first(typed)) }),
    }),
    ask("clinic-email", "email", { needed: false, example: "desk@example.org" }),
    ask("after-name", "afterName", {
      example: "Lakeside Animal Emergency Hospital; 400 Harbor Street",
      read: (typed) => nameAndAddress(listed(first(typed))),
    }),
    ask("after-phone", "afterPhone", { example: "+1 312 555 0187" }),
    ask("country", "country", { example: "US", when: ({ answers: { country } }) => country === undefined }),
    ask("zone", "zone", { kind: "one", initial: () => [zone], options: (moment) => zonesOf(moment, zone) }),
    ask("currency", "currency", { example: "USD" }),
    ask("staff-language", "language", {
      kind: "one",
      initial: () => some(languages.find(({ tag }) => tag === staffLanguage)?.tag),
      options: () => languages.map(({ tag, name }) => ({ value: tag, label: name, hint: tag })),
    }),
    ask("weekdays", "weekdays", { example: "08:00-18:00" }),
    ask("saturday", "saturday", { initial: () => ["closed"] }),
    ask("sunday", "sunday", { initial: () => ["closed"] }),
  ];
}

const flags: Record<keyof ClinicAnswers, string> = {
  name: "--name",
  address: "--address",
  phone: "--phone",
  email: "--email",
  afterName: "--after-name",
  afterAddress: "--after-address",
  afterPhone: "--after-phone",
  country: "--country",
  zone: "--zone",
  currency: "--currency",
  language: "--language",
  weekdays: "--weekdays",
  saturday: "--saturday",
  sunday: "--sunday",
};

const nameAndAddress = ([afterName = "", ...afterAddress]: string[]): ClinicAnswers =>
  afterAddress.length > 0 ? { afterName, afterAddress } : { afterName };

/** The country a phone number is of, where its code tells one. */
function countryOf(phone: string): ClinicAnswers {
  const country = parsePhoneNumberFromString(phone)?.country;
  return country ? { country } : {};
}

const some = (text: string | undefined): string[] => (text ? [text] : []);

/** The zones of the country; Node 20 has them as a property, later ones as a method, and the library types know neither. */
function zonesOf({ answers: { country = "" } }: ClinicMoment, zone: string): Option[] {
  type WithZones = { timeZones?: string[]; getTimeZones?: () => string[] };
  const locale = new Intl.Locale(/^[A-Z]{2}$/.test(country) ? `und-${country}` : "und") as unknown as WithZones;
  const zones = locale.getTimeZones?.() ?? locale.timeZones ?? [];
  return [...new Set(zones.length > 0 ? zones : [zone, "UTC"])].map((value) => ({
    value,
    label: value.replaceAll("_", " "),
  }));
}
