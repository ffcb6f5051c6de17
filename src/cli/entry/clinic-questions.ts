import type { Language, Plan, Problem } from "#index.js";
import { problem } from "#problems/problem.js";
import type { ClinicAnswers } from "./answers.js";
import { clockIn } from "./clock-in.js";
import { countries, currencyOf, zonesOf } from "./country.js";
import { hoursLine } from "./hours-line.js";
import type { Moment, Option, Question } from "./interview.js";
import { dialled, looksRight, withCountryCode } from "./phone-line.js";
import { listed } from "./said-fields.js";

export type ClinicFollowed = { plan: Plan };
type ClinicQuestion = Question<ClinicAnswers, ClinicFollowed>;
type ClinicMoment = Moment<ClinicAnswers, ClinicFollowed>;

/**
 * What is known before the first question, of this machine: where it stands, its clock's zone and the language it speaks.
 * speaks: which of our languages that is in a country.
 */
export type Machine = {
  country: string | null;
  zone: string;
  language: string;
  speaks: (country: string | undefined) => string | null;
  now: Date;
};

const at = { file: "", line: 1, column: 1, length: 1 };
const first = (typed: readonly string[]) => typed[0]?.trim() ?? "";

/** The questions of a clinic profile. languages: those a sheet may be in. */
export function clinicQuestions(languages: readonly Language[], machine: Machine): ClinicQuestion[] {
  const ask = (context: string, field: keyof ClinicAnswers, more: Partial<ClinicQuestion> = {}): ClinicQuestion => ({
    context,
    fields: [field],
    flags: [flags[field]],
    kind: "text",
    needed: true,
    read: (typed) => ({ [field]: first(typed) }),
    ...more,
  });
  const phone = (field: "phone" | "afterPhone"): Partial<ClinicQuestion> => ({
    read: (typed, { answers: { country } }) => ({ [field]: withCountryCode(first(typed), country) }),
    shown: (_, { answers }) => phoneShown(answers[field], answers.country),
  });
  const hours = (field: "weekdays" | "saturday" | "sunday"): Partial<ClinicQuestion> => ({
    read: (typed) => ({ [field]: hoursLine(first(typed)) }),
    shown: ({ plan }) => [hoursShown(plan.clinic.hours)],
  });
  return [
    ask("clinic-name", "name", { example: "Juniper Row Animal Clinic" }),
    ask("clinic-address", "address", {
      example: "18 Juniper Row; Riverbend, IL 60000",
      read: (typed) => ({ address: addressLines(first(typed)) }),
    }),
    ask("country", "country", {
      kind: "one",
      offered: () => some(machine.country),
      options: () => countryOptions(machine.language),
      shown: (_, { answers: { country = "" } }) => countryShown(country, machine.now),
    }),
    ask("clinic-phone", "phone", phone("phone")),
    ask("clinic-email", "email", { needed: false, example: "desk@example.org" }),
    ask("after-name", "afterName", {
      example: "Lakeside Animal Emergency Hospital; 400 Harbor Street",
      read: (typed) => nameAndAddress(first(typed)),
      shown: (_, { answers }) => afterShown(answers),
    }),
    ask("after-phone", "afterPhone", phone("afterPhone")),
    ask("zone", "zone", {
      kind: "one",
      when: ({ answers: { country = "" } }) => zonesOf(country).length !== 1,
      initial: () => [machine.zone],
      options: (moment) => zoneOptions(moment, machine.zone),
      shown: (_, { answers: { zone } }) => timeShown(zone, machine.now),
    }),
    ask("currency", "currency", {
      example: "USD",
      when: ({ answers: { country = "" } }) => currencyOf(country) === null,
    }),
    ask("staff-language", "language", {
      kind: "one",
      initial: ({ answers: { country } }) => some(machine.speaks(country)),
      options: () => languages.map(({ tag, name }) => ({ value: tag, label: name, hint: tag })),
    }),
    ask("weekdays", "weekdays", { example: "8am-6pm", ...hours("weekdays") }),
    ask("saturday", "saturday", { initial: () => ["closed"], ...hours("saturday") }),
    ask("sunday", "sunday", { initial: () => ["closed"], ...hours("sunday") }),
  ];
}

/** The answers with what a country says of itself, where it has one time zone alone and one money. */
export function withCountry(answers: ClinicAnswers): ClinicAnswers {
  const { country = "" } = answers;
  const [zone, ...others] = zonesOf(country);
  const currency = currencyOf(country);
  return {
    ...(zone !== undefined && others.length === 0 ? { zone } : {}),
    ...(currency === null ? {} : { currency }),
    ...answers,
  };
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

/** The street, and the town with all that follows it, where nothing else is said to part them: "12 High Street, Riverbend, IL". */
const addressLines = (typed: string): string[] => listed(typed.includes(";") ? typed : typed.replace(",", ";"));

/** "Lakeside Hospital; 400 Harbor Street"; without a semicolon, what follows a comma and holds a number is the address. */
function nameAndAddress(typed: string): ClinicAnswers {
  const isApart = typed.includes(";") || /,.*\d/.test(typed);
  const [afterName = "", ...afterAddress] = isApart
    ? listed(typed.includes(";") ? typed : typed.replaceAll(",", ";"))
    : [typed];
  return afterAddress.length > 0 ? { afterName, afterAddress } : { afterName };
}

function afterShown({ afterName: name = "", afterAddress = [] }: ClinicAnswers): Problem[] {
  const address = afterAddress.join(", ");
  return [problem("new-after", at, { name, address, context: address === "" ? "alone" : "" })];
}

const some = (text: string | null | undefined): string[] => (text ? [text] : []);

function countryOptions(language: string): Option[] {
  const names = new Intl.DisplayNames(language, { type: "region" });
  return countries()
    .map((value) => ({ value, label: names.of(value) ?? value, hint: value }))
    .sort((a, b) => a.label.localeCompare(b.label, language));
}

function zoneOptions({ answers: { country = "" } }: ClinicMoment, zone: string): Option[] {
  const zones = zonesOf(country);
  return (zones.length > 0 ? zones : [...new Set([zone, "UTC"])]).map((value) => ({
    value,
    label: value.replaceAll("_", " "),
  }));
}

/** What its money looks like, and what time it is there where that is the same in all of it. */
function countryShown(country: string, now: Date): Problem[] {
  const { zone, currency } = withCountry({ country });
  const price = currency === undefined ? [] : [problem("new-price", at, { price: { minor: 4800, currency } })];
  return [...timeShown(zone, now), ...price];
}

const timeShown = (zone: string | undefined, now: Date): Problem[] =>
  zone === undefined ? [] : [problem("new-time", at, { time: clockIn(zone, now) })];

const phoneShown = (phone: string | undefined, country: string | undefined): Problem[] =>
  phone === undefined
    ? []
    : [
        problem("new-phone", at, {
          phone: dialled(phone, country),
          context: looksRight(phone, country) ? "" : "unlike",
        }),
      ];

function hoursShown(week: Plan["clinic"]["hours"]): Problem {
  const minutes = (clock: string) => Number(clock.slice(0, 2)) * 60 + Number(clock.slice(3));
  const open = Object.values(week)
    .flat()
    .reduce((sum, { open, close }) => sum + minutes(close) - minutes(open), 0);
  return problem("new-hours", at, { hours: Math.round(open / 6) / 10 });
}
