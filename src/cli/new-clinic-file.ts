import { dirname, join } from "node:path";
import { choices, clinicJsonSchema, languages, type Outcome, speaks } from "#index.js";
import { isThere } from "#io/find-above.js";
import { type Problem, problem } from "#problems/problem.js";
import { settle } from "#problems/settle.js";
import { called } from "./called.js";
import type { Case } from "./case.js";
import { noReviews } from "./clinic-reviews.js";
import { openDesk } from "./desk.js";
import type { ClinicAnswers } from "./entry/answers.js";
import { asker, canAsk, teller } from "./entry/ask.js";
import { clinicDraft } from "./entry/clinic-draft.js";
import { type ClinicFollowed, clinicQuestions, withCountry } from "./entry/clinic-questions.js";
import { countryOfMachine } from "./entry/country.js";
import { hold } from "./entry/interview.js";
import { countryOfPhone } from "./entry/phone-line.js";
import { planDraft } from "./entry/plan-draft.js";
import { remarks } from "./entry/remarks.js";
import { standIns } from "./entry/stand-ins.js";
import { tryPlan } from "./entry/trial.js";
import { writeFresh } from "./entry/write-fresh.js";
import type { ExitCode } from "./exit-code.js";
import type { NewClinicOptions } from "./options.js";
import { report } from "./report.js";
import { deskLanguage, sayer } from "./say.js";

const at = { file: "", line: 1, column: 1, length: 1 };
const schemaName = "clinic.schema.json";

/** Asks for a clinic profile, or takes it from flags, and writes it. A plan is tried with it first. */
export async function newClinic(path: string, { json, ...options }: NewClinicOptions): Promise<ExitCode> {
  const desk = await openDesk(json ? { json } : {});
  const say = sayer(desk);
  if (await isThere(path)) {
    say(problem("new-exists", at, { path }));
    return 2;
  }
  const { house } = desk;
  const offered = choices(house);
  const tried = (text: string, language: string) => {
    const clinic = { file: path, bytes: new TextEncoder().encode(text) };
    const plan = { discharged: "2026-03-02 12:00", ...standIns({}, offered, language) };
    const draft = { clinic: path, schema: null, collars: offered.collars, asks: [] };
    return tryPlan(
      planDraft(plan, draft, () => ""),
      "plan",
      { house, clinic, today: "2026-03-02" },
    );
  };
  const tryOut = (answers: ClinicAnswers): Outcome<ClinicFollowed> =>
    tried(
      clinicDraft({ ...standInsOf(answers), ...withCountry(answers) }, null, () => "", false),
      answers.language ?? "en",
    );

  const zone = new Intl.DateTimeFormat().resolvedOptions().timeZone;
  const language = speaks(house, deskLanguage()) ?? "en";
  const country = countryOfMachine(zone, deskLanguage());
  const spoken = (of = "") =>
    speaks(house, new Intl.Locale(deskLanguage(), /^[A-Z]{2}$/.test(of) ? { region: of } : {}).toString());
  const questions = clinicQuestions(languages(house), { country, zone, language, speaks: spoken, now: new Date() });
  const asking = canAsk() ? asker(desk, deskLanguage(), tryOut) : null;
  if (asking) say(problem("new-keys", at, {}));
  const given = { ...fromPhone(options.phone), ...options };
  const held = await hold({ questions, tryOut }, given, asking, teller(desk, deskLanguage()));
  if (!held) {
    say(problem("new-cancelled", at, {}));
    return 2;
  }
  if (held.missing.length > 0) {
    for (const one of missingOf(held.answers, held.missing)) say(one);
    return 2;
  }

  const answers = withCountry(held.answers);
  const writes = answers.language ?? deskLanguage();
  const draft = (holidays: boolean) => clinicDraft(answers, schemaName, remarks(house, writes), holidays);
  const hasHolidays = !tried(draft(true), writes).problems.some(({ code }) => code === "holiday-place-unknown");
  const text = draft(hasHolidays);
  const { problems } = tried(text, writes);
  const settled = settle(toldOnce(problems.filter((one) => one.at.file === path)), []);
  const texts: Case["texts"] = [{ file: path, bytes: new TextEncoder().encode(text), is: "clinic", firstLine: 1 }];
  report(
    desk,
    {
      name: path,
      plan: { value: null, problems },
      earlier: [],
      past: [],
      texts,
      house,
      language: writes,
      reviews: noReviews,
    },
    settled,
  );
  if (settled.open.length > 0) return 1;

  const unwritten = await writeFresh(path, text);
  if (unwritten) {
    say(unwritten);
    return 2;
  }
  await writeFresh(join(dirname(path), schemaName), `${JSON.stringify(clinicJsonSchema(), null, 2)}\n`);
  if (!json) {
    say(problem("new-written", at, { path }));
    say(problem("new-next", at, { command: `${called()} new` }));
  }
  desk.terminal.out(json ? JSON.stringify({ clinic: path }) : path);
  return 0;
}

/** A phone with its country code says where the clinic is. */
function fromPhone(phone: string | undefined): ClinicAnswers {
  const country = phone === undefined ? undefined : countryOfPhone(phone);
  return country === undefined ? {} : { country };
}

/** The flags that are missing. The country is known by the phone: where only its code is, that is what is missing. */
function missingOf({ phone }: ClinicAnswers, flags: string[]): Problem[] {
  const lacksCode = phone !== undefined && flags.includes("--country");
  const others = lacksCode ? flags.filter((flag) => flag !== "--country") : flags;
  return [
    ...(lacksCode ? [problem("phone-unreadable", at, { given: phone })] : []),
    ...(others.length > 0 ? [problem("new-missing", at, { flags: others })] : []),
  ];
}

/** One answer stands for five days: what is wrong with it is told at the first of them. */
const toldOnce = (problems: readonly Problem[]): Problem[] =>
  problems.filter((one, i) => i === problems.findIndex((other) => sameFault(one, other)));
const sameFault = (one: Problem, other: Problem) =>
  one.code === other.code && JSON.stringify(one.values) === JSON.stringify(other.values);

/** What stands in for answers to come; none is ever written. 555 numbers reach nobody. */
const standInsOf = ({ country = "US" }: ClinicAnswers): ClinicAnswers => ({
  name: "-",
  address: ["-"],
  phone: "+1 312 555 0100",
  afterName: "-",
  afterPhone: "+1 312 555 0101",
  zone: "UTC",
  country,
  currency: "USD",
  language: "en",
  weekdays: "08:00-18:00",
});
