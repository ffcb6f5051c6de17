import type { Choices, Problem } from "#index.js";
import { problem } from "#problems/problem.js";
import type { Answers } from "./answers.js";
import { collarFields, collarLine } from "./collar-line.js";
import type { Habits } from "./habits.js";
import type { Moment, Option, Question, Read } from "./interview.js";
import { isOrdered, medicineLine } from "./medicine-line.js";
import { listed } from "./said-fields.js";
import {
  careShown,
  collarShown,
  collarWanted,
  costShown,
  type Followed,
  medicinesShown,
  visitsShown,
} from "./shown.js";
import { usualItems, usualUntil } from "./usual.js";

type PlanQuestion = Question<Answers, Followed>;
type PlanMoment = Moment<Answers, Followed>;

/** What is known before the first question. languages: a tag and its own name; translated: those a translator has reviewed. */
export type Known = {
  choices: Choices;
  /** The name of a topic in a language, and what else staff look for it by. */
  topicWords: (id: string, language: string) => { name: string; also: string };
  languages: { tag: string; name: string; reviewed: boolean }[];
  staffLanguage: string;
  /** The prices of the clinic profile that any plan may name: no medicine by the piece. */
  prices: string[];
  /** Who signs where nobody else is named. */
  clinician: string | null;
  habits: Habits;
};

const at = { file: "", line: 1, column: 1, length: 1 };
/** The fields of a medicine that a line usually has, of all that medicineFields knows. */
const oftenNamed = ["tablet", "capsule", "liquid", "dose", "give", "every", "for", "last given", "dispense", "why"];
const sexes = ["spayed female", "female", "neutered male", "male"];
const first = (typed: readonly string[]) => typed[0]?.trim() ?? "";

/** The twelve questions of a plan, in the order in which each says something to the next. */
export function planQuestions(known: Known): PlanQuestion[] {
  const { choices } = known;
  const topicOf = ({ answers }: PlanMoment) => choices.topics.find(({ id }) => id === answers.topic);
  const before = ({ answers }: PlanMoment) => known.habits.topics[answers.topic ?? ""];
  const needs = (moment: PlanMoment, part: "site" | "bandage") => topicOf(moment)?.[part] ?? "none";

  return [
    {
      context: "animal",
      fields: ["species", "sex"],
      flags: ["--species", "--sex"],
      kind: "one",
      needed: true,
      options: () => ["dog", "cat"].flatMap((species) => sexes.map((sex) => ({ value: `${species}, ${sex}` }))),
      read: (typed) => {
        const [species = "", sex = ""] = first(typed).split(", ");
        return { species, sex };
      },
    },
    {
      context: "patient",
      fields: ["name", "weight"],
      flags: ["--name", "--weight"],
      kind: "text",
      needed: true,
      example: "Bramble, 24.6 kg",
      read: nameAndWeight,
    },
    {
      ...text("owner", "owner", { needed: true, example: "Lucía Ferrer" }),
      shown: ({ plan }, { answers: { clinician } }) => [
        handedOut(plan.discharged),
        ...(clinician !== undefined && clinician === known.clinician
          ? [problem("new-clinician", at, { clinician })]
          : []),
      ],
    },
    {
      ...text("language", "language", { needed: true }),
      kind: "one",
      initial: () => [known.staffLanguage],
      options: () => languageOptions(known),
      shown: (_, { answers: { language } }) => unreviewed(known, language),
    },
    {
      ...text("topic", "topic", { needed: true }),
      kind: "one",
      options: ({ answers }) => topicOptions(known, answers),
      shown: ({ facts }, moment) => [...careShown(facts), ...collarWanted(topicOf(moment))],
    },
    {
      ...text("site", "site", { needed: true, example: "left cheek" }),
      when: (moment) => needs(moment, "site") === "needed",
    },
    {
      ...text("bandage", "bandage", { needed: true }),
      kind: "one",
      when: (moment) => needs(moment, "bandage") === "needed",
      initial: (moment) => some(before(moment)?.bandage),
      options: () => choices.bandages.map((value) => ({ value })),
    },
    {
      ...text("reason", "reason", { needed: true }),
      initial: (moment) => some(usualReason(moment, known, known.staffLanguage)),
      read: (typed, moment) => ({ reason: toldOf(first(typed), moment, known) }),
    },
    {
      ...text("course", "course", { needed: false, example: "change every day for 3-5 days, first tomorrow" }),
      initial: (moment) => some((before(moment)?.course ?? topicOf(moment)?.usualCourse)?.join("; ")),
      offered: (moment) => some((before(moment)?.course ?? topicOf(moment)?.oftenCourse)?.join("; ")),
      // What is usual is taken by an empty line, so none at all has a mark of its own.
      read: (typed) => ({ course: first(typed) === "-" ? [] : listed(first(typed)) }),
      shown: ({ facts }) => visitsShown(facts),
    },
    {
      ...text("medicines", "medicines", {
        needed: false,
        example: "carprofen … mg tablet, … mg/kg q…h for … days, last given 9 am",
      }),
      flags: ["--medicine"],
      // The neck of the collar bears the weight out.
      settledLater: ["weight-not-borne-out"],
      read: (typed) => readMedicines(listed(first(typed))),
      shown: (followed, { answers: { medicines = [] } }) =>
        medicinesShown(
          followed,
          medicines
            .map((line) => medicineLine(line))
            .flatMap((said) => (isOrdered(said) ? [] : (said.fields["name"] ?? []))),
        ),
    },
    {
      ...text("collar", "collar", { needed: false, example: "41 cm, 20 cm" }),
      read: (typed, moment) => readCollar(first(typed), moment, topicOf(moment)?.oftenUntil ?? null, choices),
      shown: ({ facts }) => collarShown(facts),
    },
    {
      ...text("items", "items", { needed: false }),
      flags: ["--item"],
      kind: "many",
      when: () => known.prices.length > 0,
      initial: (moment) => itemsOf(moment, known, before(moment)?.items ?? []),
      options: (moment) => {
        const usual = itemsOf(moment, known, before(moment)?.items ?? []);
        const plain = usual.map((item) => item.replace(/ if (done|needed)$/, ""));
        return [...usual, ...known.prices.filter((item) => !plain.includes(item))].map((value) => ({ value }));
      },
      read: (typed) => ({ items: [...typed] }),
      shown: ({ facts }) => costShown(facts),
    },
  ];
}

const handedOut = (discharged: string): Problem =>
  problem("new-discharged", at, { on: { day: discharged.slice(0, 10) }, time: discharged.slice(11) });

const some = (text: string | undefined): string[] => (text ? [text] : []);

/** A question whose answer is one field, typed as it stands in a plan. */
function text(
  context: string,
  field: keyof Answers,
  { needed, example }: { needed: boolean; example?: string },
): PlanQuestion {
  return {
    context,
    fields: [field],
    flags: [`--${context}`],
    kind: "text",
    needed,
    ...(example === undefined ? {} : { example }),
    read: (typed) => ({ [field]: first(typed) }),
  };
}

const usualReason = ({ answers: { topic } }: PlanMoment, { topicWords }: Known, language: string) =>
  topic === undefined ? "" : `${topicWords(topic, language).name}.`;

/** What is usual is known in the owner's language too; what somebody typed is not. */
function toldOf(typed: string, moment: PlanMoment, known: Known): NonNullable<Answers["reason"]> {
  const { language = known.staffLanguage } = moment.answers;
  const { staffLanguage } = known;
  if (language === staffLanguage || typed !== usualReason(moment, known, staffLanguage)) return typed;
  return { [staffLanguage]: typed, [language]: usualReason(moment, known, language) };
}

/**
 * "Bramble, 24.6 kg": the weight begins with the first number after a comma, and may hold one: "4,3 kg". Without a comma it is
 * the number that ends the line with its unit: "Bramble 24.6kg".
 */
function nameAndWeight(typed: readonly string[]): Read<Answers> {
  const said = first(typed);
  const [, name = "", weight = ""] =
    /^(.*?\S)\s*(?:(?<!\d),|,(?!\d))\s*(\d.*)$/.exec(said) ??
    /^(.*?\S)\s+(\d+(?:[.,]\d+)? ?(?:kg|lb))s?$/i.exec(said) ??
    [];
  if (name === "") return problem("new-name-and-weight", at, { given: said });
  return { name, weight };
}

function readMedicines(medicines: string[]): Read<Answers> {
  const [given] = medicines.flatMap((line) => medicineLine(line).unknown ?? []);
  if (given !== undefined) return problem("new-answer-unreadable", at, { given, known: oftenNamed });
  return { medicines };
}

/** Until when is asked only where neither the course says it nor, often, its kind of care. */
function readCollar(typed: string, { facts }: PlanMoment, often: string | null, choices: Choices): Read<Answers> {
  if (typed === "") return { collar: "" };
  const { fields, unknown } = collarLine(typed, choices.collars);
  if (unknown !== null) return problem("new-answer-unreadable", at, { given: unknown, known: collarFields });
  if (fields["until"] !== undefined) return { collar: typed };
  const ends = (firm: boolean) => facts && usualUntil(facts.facts, choices, firm);
  const until = ends(true) ?? often ?? ends(false);
  if (until === null) return problem("new-collar-until", at, { known: choices.until.map(({ event }) => event) });
  return { collar: `${typed}, until ${until}` };
}

function itemsOf({ facts }: PlanMoment, { choices, prices }: Known, earlier: readonly string[]): string[] {
  const usual = facts ? usualItems(facts.plan, facts.facts, choices) : [];
  const known = earlier.filter((item) => prices.some((price) => item === price || item.startsWith(`${price} `)));
  const plain = (item: string) => item.replace(/ (x \d+|if (done|needed))/g, "");
  return [...usual, ...known.filter((item) => !usual.some((one) => plain(one) === plain(item)))];
}

function languageOptions({ languages, habits, staffLanguage }: Known): Option[] {
  const usual = [staffLanguage, ...habits.languages];
  const rank = (tag: string) => (usual.includes(tag) ? usual.indexOf(tag) : usual.length);
  return languages
    .toSorted((a, b) => rank(a.tag) - rank(b.tag))
    .map(({ tag, name }) => ({ value: tag, label: name, hint: tag }));
}

const unreviewed = ({ languages }: Known, asked: string | undefined) =>
  languages
    .filter(({ tag, reviewed }) => tag === asked && !reviewed)
    .map(({ name }) => problem("new-language", at, { language: name }));

function topicOptions({ choices, topicWords, staffLanguage, habits }: Known, { species, sex }: Answers): Option[] {
  const often = Object.keys(habits.topics);
  const plain = sex?.endsWith("female") ? "female" : "male";
  return choices.topics
    .filter((topic) => topic.species.some((one) => one === species) && (!sex || topic.sex.includes(plain)))
    .map(({ id }) => ({ id, ...topicWords(id, staffLanguage) }))
    .sort((a, b) => often.lastIndexOf(b.id) - often.lastIndexOf(a.id) || a.name.localeCompare(b.name, staffLanguage))
    .map(({ id, name, also }) => ({ value: id, label: name, hint: id, also }));
}
