import { dirname, isAbsolute, join } from "node:path";
import { choices, languages, type Outcome, type Plan, pricesPath, speaks, staffLanguage, topics } from "#index.js";
import { findAbove } from "#io/find-above.js";
import { readSource } from "#io/read-source.js";
import { readKept } from "#io/state.js";
import { type Problem, problem } from "#problems/problem.js";
import type { Case, Text } from "../case.js";
import { clinicHouse } from "../clinic-house.js";
import { noReviews } from "../clinic-reviews.js";
import type { Desk } from "../desk.js";
import { deskLanguage } from "../say.js";
import type { Answers } from "./answers.js";
import { clockIn, dayIn } from "./clock-in.js";
import { readHabits } from "./habits.js";
import { planDraft } from "./plan-draft.js";
import type { Known } from "./plan-questions.js";
import type { Followed } from "./shown.js";
import { standIns } from "./stand-ins.js";
import { type Ground, tryPlan } from "./trial.js";

const at = { file: "", line: 1, column: 1, length: 1 };
const names = ["clinic.yaml", "clinic.yml", "clinic.json"];
/** How far above a plan its clinic profile may lie. */
const stepsUp = 4;

/** All that a plan is asked for with: the clinic it is of, what is known beforehand, and what would follow from answers. */
export type PlanRoom = {
  clinicPath: string;
  texts: Text[];
  language: string;
  collars: string[];
  profile: Plan["clinic"];
  known: Known;
  /** Answers that nobody is asked for. */
  usual: Answers;
  ground: Ground;
  tryOut: (answers: Answers) => Outcome<Followed>;
};
type Refusal = { problems: Problem[]; broken: Case | null };
type Opened = { room: PlanRoom; refusal: null } | { room: null; refusal: Refusal };

/** folder: that of the new plan. clinic: the path of the profile, if it is named. today: the day at the clinic, unless said. */
export async function openPlanRoom(
  { house: ours }: Desk,
  folder: string,
  { clinic: named, today: said, now = new Date() }: { clinic?: string; today?: string; now?: Date },
): Promise<Opened> {
  const refuse = (problems: Problem[], broken: Case | null = null): Opened => ({
    room: null,
    refusal: { problems, broken },
  });
  const clinicPath = named ?? (await findAbove(folder, names, stepsUp));
  if (clinicPath === null) return refuse([problem("new-clinic-missing", at, { path: folder })]);
  const { value: clinic, problems: unread } = await readSource(clinicPath);
  if (!clinic) return refuse(unread);
  const none = { file: "", bytes: new Uint8Array() };
  const pricesNamed = pricesPath({ plan: none, clinic });
  const { value: prices } =
    pricesNamed === null
      ? { value: null }
      : await readSource(isAbsolute(pricesNamed) ? pricesNamed : join(dirname(clinicPath), pricesNamed));

  const language = staffLanguage({ plan: none, clinic }) ?? speaks(ours, deskLanguage()) ?? "en";
  const own = await clinicHouse(ours, dirname(clinicPath));
  const texts: Text[] = [
    { ...clinic, is: "clinic", firstLine: 1 },
    ...(prices ? [{ ...prices, is: "prices" as const, firstLine: 1 }] : []),
    ...own.own.map((text) => ({ ...text, is: "own" as const, firstLine: 1 })),
  ];
  const brokenBy = (problems: Problem[]): Case => ({
    ...{ name: clinicPath, plan: { value: null, problems }, earlier: [], past: [], texts },
    ...{ house: own.house ?? ours, language, reviews: noReviews },
  });
  const { house } = own;
  if (!house) return refuse([], brokenBy(own.problems));
  const offered = choices(house);
  const groundOn = (today: string): Ground => ({ house, clinic, prices: prices ?? undefined, today });
  const tryOn =
    (ground: Ground) =>
    (answers: Answers): Outcome<Followed> => {
      const whole = { discharged: `${ground.today} 12:00`, ...standIns(answers, offered, language), ...answers };
      const draft = { clinic: "clinic", schema: null, collars: offered.collars, asks: [] };
      const text = planDraft(whole, draft, () => "");
      const { value, problems } = tryPlan(text, "plan", ground);
      return { value: value?.facts ? { plan: value.plan, facts: value.facts } : null, problems };
    };
  const bare = tryOn(groundOn(said ?? dayIn("UTC", now)))({});
  if (!bare.value) return refuse([], brokenBy(bare.problems));
  const profile: Plan["clinic"] = bare.value.plan.clinic;
  // Between midnight here and midnight there it is another day at the clinic.
  const today = said ?? dayIn(profile["time zone"], now);
  const ground = groundOn(today);
  const tryOut = tryOn(ground);
  const habits = readHabits(await readKept("choices.json"));
  const clinician = whoSigns(profile.clinicians, habits.clinician);
  const known: Known = {
    choices: offered,
    topicWords: (id, asked) => topics(house, asked).find((one) => one.id === id) ?? { name: id, also: "" },
    languages: languages(house).map(({ tag, name, state }) => ({ tag, name, reviewed: state !== "unreviewed" })),
    staffLanguage: language,
    prices: profile.prices.flatMap(({ item, per }) => (per === "unit" ? [] : [item])),
    clinician,
    habits,
  };
  const usual = {
    discharged: `${today} ${clockIn(profile["time zone"], now)}`,
    ...(clinician === null ? {} : { clinician }),
  };
  return {
    room: { clinicPath, texts, language, collars: offered.collars, profile, known, usual, ground, tryOut },
    refusal: null,
  };
}

/** Who signed last, where the clinic knows them or names nobody; else its only clinician. */
function whoSigns(clinicians: Plan["clinic"]["clinicians"], last: string | null): string | null {
  const [only, ...others] = clinicians;
  if (last !== null && (!only || clinicians.some(({ name }) => name === last))) return last;
  return only && others.length === 0 ? only.name : null;
}
