/**
 * hearthsheet: text -> plan -> facts -> handout -> bytes.
 *
 * The plan is what was said. Facts are what follows. The handout is what we tell them. Bytes are how it looks.
 * Each stage takes plain data and gives an Outcome: its result, unless something stops it, and every problem it found.
 */
import { createHash } from "node:crypto";
import { compose as composeHandout } from "#compose/compose.js";
import { overrideTemplates } from "#compose/override.js";
import { composeProof } from "#compose/proof/proof.js";
import { type Document, openTemplates, type Templates } from "#compose/templates.js";
import { type TopicWords, topicWords } from "#compose/topic-sheet.js";
import { compute as computeFacts } from "#compute/compute.js";
import type { Facts } from "#compute/facts.js";
import { freeTextOf } from "#compute/free-text.js";
import { revise as revisePlan } from "#compute/revise/revise.js";
import type { Handout } from "#handout/handout.js";
import { guardTranslation } from "#locale/guards/guards.js";
import { languageName } from "#locale/language-name.js";
import { type Locales, openLocales } from "#locale/locales.js";
import { matchLanguage } from "#locale/match.js";
import { medicineNames } from "#locale/medicine-names.js";
import { overrideTexts } from "#locale/override.js";
import { withClinicReview } from "#locale/status/clinic-review.js";
import type { ClinicReview } from "#locale/status/kinds.js";
import { type LanguageStatus, stateOf, statusOf } from "#locale/status/status.js";
import { tellProblem } from "#locale/tell.js";
import { speak } from "#locale/voice.js";
import type { Logo } from "#logo/logo.js";
import type { Edit, Plan, VisitEntry } from "#plan/plan.js";
import { placeOf } from "#problems/place.js";
import { type Outcome, type Problem, problem } from "#problems/problem.js";
import { type Reading, readPage } from "#reading/reading.js";
import { alwaysSaid } from "#tables/always-said.js";
import { type Choices, choicesOf } from "#tables/choices.js";
import { openTables, type Tables } from "#tables/tables.js";

export { clinicReviewsFile, readClinicReviews } from "#locale/status/clinic-review.js";
export { openLogo } from "#logo/open-logo.js";
export { editPlan } from "#plan/edit-plan.js";
export { clinicJsonSchema, planJsonSchema } from "#plan/json-schema.js";
export { type Entry, modeline, newFile, type Yaml } from "#plan/new-file.js";
export { clinicPath, namedIn, pricesPath, type Sources } from "#plan/read-clinic.js";
export { readPlan } from "#plan/read-plan.js";
export { staffLanguage } from "#plan/staff-language.js";
export type { Source } from "#plan/text-of.js";
export { mergeVisit } from "#plan/visit-entry.js";
export { type Reason, settle } from "#problems/settle.js";
export { renderRecord as record } from "#render/record/record.js";
export type { Choices, ClinicReview, Document, Edit, Facts, Handout, Logo, Outcome, Plan, Problem, Reading };

/** Font families in the order they are used, two files each: TrueType for the page, WOFF2 for the screen. */
export type Fonts = { pdf: FontFamily[]; web: FontFamily[] };
type FontFamily = { regular: Uint8Array; bold: Uint8Array };
/** All that ships with the tool, checked once: tables, templates, words and fonts; overrides: what a clinic has of its own. */
export type House = {
  tables: Tables;
  templates: Templates;
  locales: Locales;
  fonts: Fonts;
  overrides: readonly Overridden[];
};
/** A file of a clinic's own, by the name of ours that it stands for; texts: the sentences that a file of them says otherwise. */
export type Overridden = { name: string; file: string; sha256: string; texts?: readonly string[] };
/** name: "templates/handout/ring.hbs" or "locales/es/handout.json"; file: the name to tell problems by, where it is another. */
export type OwnFile = { name: string; bytes: Uint8Array; file?: string };

/** What a handout can be drawn as, in the order the files are written. */
export const formats = ["pdf", "html", "text", "ics", "sms", "eml", "labels"] as const;
/** One of formats: "text" gives handout.txt, "ics" gives rechecks.ics, "sms" gives messages.txt. */
export type Format = (typeof formats)[number];
/** document: the name of the files, "handout" unless it is a part alone or a proof; the short form is set on one page. */
export type RenderOptions = {
  paper: "letter" | "a4";
  large: boolean;
  formats: readonly Format[];
  document?: Document | "proof" | undefined;
  logo?: Logo | null | undefined;
};
/** A file of a package. name: "handout.pdf", or with its folder, "es/handout.pdf". */
export type OutputFile = { name: string; bytes: Uint8Array };

/** The first is for reading; the others for what it lacks. Screens have fonts for Chinese of their own. */
const fontNames = {
  pdf: ["plain", "latin", "arabic", "han"],
  web: ["plain", "latin", "greek", "arabic", "arabic-all"],
};

/** files: by path, "templates/handout/handout.hbs", "locales/es/handout.json", "shared/visits.json", "fonts/pdf-plain-bold.ttf". */
export function openHouse(files: Record<string, Uint8Array>): Outcome<House> {
  const decoder = new TextDecoder();
  const texts = (folder: string) =>
    Object.fromEntries(
      Object.entries(files)
        .filter(([path]) => path.startsWith(folder))
        .map(([path, bytes]) => [path, decoder.decode(bytes)]),
    );
  const locales = openLocales(texts("locales/"));
  const tables = openTables(texts("shared/"), locales.value ? medicineNames(locales.value) : []);
  const problems = [...tables.problems, ...locales.problems];
  if (!tables.value || !locales.value) return { value: null, problems };
  const templates = openTemplates(texts("templates/"), locales.value);
  problems.push(...templates.problems);
  if (!templates.value) return { value: null, problems };
  const family = (name: string, ending: string): FontFamily[] => {
    const [regular, bold] = ["regular", "bold"].map((weight) => files[`fonts/${name}-${weight}.${ending}`]);
    return regular && bold ? [{ regular, bold }] : [];
  };
  const fonts = {
    pdf: fontNames.pdf.flatMap((name) => family(`pdf-${name}`, "ttf")),
    web: fontNames.web.flatMap((name) => family(`web-${name}`, "woff2")),
  };
  return {
    value: { tables: tables.value, templates: templates.value, locales: locales.value, fonts, overrides: [] },
    problems,
  };
}

/**
 * The house with a clinic's own templates and texts laid over ours, in place of any laid before. A template stands for ours of its name; a file of texts has
 * the shape of ours, and says only what it says otherwise. Both are held to what a handout must be: DEVELOPERS.md tells how.
 */
export function override(house: House, files: readonly OwnFile[]): Outcome<House> {
  const own = files.map(({ name, bytes, file = name }) => ({ path: name, bytes, file, text: textIn(bytes) }));
  const unread = own.filter(({ text }) => text === null);
  if (unread.length > 0) return { value: null, problems: unread.map(({ file }) => noText(file)) };
  const isText = ({ path }: { path: string }) => path.startsWith("locales/");
  const read = own.map(({ text, ...one }) => ({ ...one, text: text ?? "" }));
  const words = overrideTexts(house.locales, read.filter(isText));
  const templates = overrideTemplates(
    house.templates,
    read.filter((one) => !isText(one)),
    words.value?.locales ?? house.locales,
  );
  const problems = [...words.problems, ...templates.problems];
  if (!words.value || !templates.value) return { value: null, problems };
  const { locales, said } = words.value;
  const overrides = own
    .map(
      ({ path, file, bytes }): Overridden => ({
        name: path,
        file,
        sha256: sha256(bytes),
        ...(said[path] ? { texts: said[path] } : {}),
      }),
    )
    .sort((a, b) => (a.name < b.name ? -1 : 1));
  return { value: { ...house, templates: templates.value, locales, overrides }, problems };
}

/** The text of a file, or null where it is none in UTF-8. */
function textIn(bytes: Uint8Array): string | null {
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    return null;
  }
}

const noText = (file: string): Problem =>
  problem("override-unusable", { file, line: 1, column: 1, length: 1 }, { path: file, context: "not-text", limit: 0 });

const sha256 = (bytes: Uint8Array): string => createHash("sha256").update(bytes).digest("hex");

/**
 * What follows from the plan: dates, doses, money, fit and signs, each with its place. earlier: the revisions before it, the
 * oldest first, to tell what changed.
 */
export function compute(plan: Plan, house: House, earlier: readonly Plan[] = []): Outcome<Facts> {
  let before: Facts | null = null;
  for (const one of earlier) before = computeFacts(one, house.tables, before).value;
  return computeFacts(plan, house.tables, before);
}

/** The next revision's changes to a plan's text, from a visit that took place. facts: those of the plan as it stands. */
export const revise = (plan: Plan, facts: Facts, entry: VisitEntry, house: House): Outcome<Edit[]> =>
  revisePlan(plan, facts, entry, house.tables.visits, house.tables.care.topics);

/**
 * The facts put into words: a document tree in one language. document: the handout, its short form, or its estimate alone;
 * reviews: what the clinic has read itself, so that the page need not say that nobody has.
 */
export const compose = (
  facts: Facts,
  house: House,
  { language, document = "handout", staffToo = false, reviews = [] }: ComposeOptions,
): Outcome<Handout> =>
  composeHandout(facts, {
    language,
    document,
    staffToo,
    reviews,
    templates: house.templates,
    locales: house.locales,
  });

/**
 * The handout in the owner's language beside the same in the staff's, line by line, each with who has read it: for the clinic
 * alone. Null where both are one language, and a note says so.
 */
export const proof = (facts: Facts, house: House, { language, reviews = [] }: ComposeOptions): Outcome<Handout> =>
  composeProof(facts, { language, reviews, templates: house.templates, locales: house.locales });

/** language: a BCP 47 tag, or several in the order the owner reads them. staffToo: the e-mail also says it in the language of the clinic's staff. */
export type ComposeOptions = {
  language: string | readonly string[];
  document?: Document | undefined;
  staffToo?: boolean | undefined;
  reviews?: readonly ClinicReview[] | undefined;
};

/** How easily a handout is read, and the clinician's own words of its plan; hard sentences and words are told as notes. */
export const reading = (plan: Plan, handout: Handout, { tables }: House): Reading =>
  readPage(handout, freeTextOf(plan), placeOf(plan.places, "care"), {
    rules: tables.reading,
    glossary: tables.glossary,
  });

/** Draws the handout in each format. Renderers are loaded only when they are asked for. */
export async function render(handout: Handout, house: House, options: RenderOptions): Promise<Outcome<OutputFile[]>> {
  const drawn = await Promise.all(options.formats.map((format) => renderers[format](handout, house, options)));
  const problems = drawn.flatMap((outcome) => outcome.problems);
  const whole = drawn.every(({ value }) => value !== null);
  return { value: whole ? drawn.flatMap(({ value }) => value ?? []) : null, problems };
}

/** What is promised to fit on one page, and what is set on one where it does. */
const onePage: { [D in Document | "proof"]?: "must" | "may" } = { "first-page": "must", estimate: "may" };

type Renderer = (handout: Handout, house: House, options: RenderOptions) => Promise<Outcome<OutputFile[]>>;

const renderers: Record<Format, Renderer> = {
  async pdf(handout, { fonts }, { paper, large, logo, document = "handout" }) {
    const { renderPdf } = await import("#render/pdf/pdf.js");
    const page = { paper, large, fonts: fonts.pdf, onePage: onePage[document], logo };
    const { value, problems } = await renderPdf(handout, page);
    return { value: value && [{ name: `${document}.pdf`, bytes: value }], problems };
  },
  async html(handout, { fonts }, { logo, document = "handout" }) {
    const { renderHtml } = await import("#render/html/html.js");
    const calendar = await calendarOf(handout);
    return file(`${document}.html`, renderHtml(handout, { fonts: fonts.web, calendar, logo }));
  },
  async text(handout, _house, { document = "handout" }) {
    const { renderText } = await import("#render/text/text.js");
    return file(`${document}.txt`, renderText(handout));
  },
  async labels(handout, { fonts }) {
    const { title, sections } = handout.labels ?? { title: "", sections: [] };
    if (sections.length === 0) return { value: [], problems: [] };
    const { renderPdf } = await import("#render/pdf/pdf.js");
    const roll = { paper: "label" as const, large: false, fonts: fonts.pdf };
    const { value, problems } = renderPdf({ ...handout, title, sections }, roll);
    return { value: value && [{ name: "labels.pdf", bytes: value }], problems };
  },
  async sms(handout) {
    const { renderSms } = await import("#render/sms/sms.js");
    const text = renderSms(handout);
    return text === "" ? { value: [], problems: [] } : file("messages.txt", text);
  },
  async ics(handout) {
    const calendar = await calendarOf(handout);
    if (calendar === undefined) return { value: [], problems: [] };
    const { renderCancelled } = await import("#render/calendar/calendar.js");
    const cancelled = renderCancelled(handout);
    return both(file("rechecks.ics", calendar), cancelled === null ? null : file("cancelled.ics", cancelled));
  },
  async eml(handout, house, options) {
    const attached = await render(handout, house, { ...options, formats: ["pdf", "html", "ics"] });
    if (!attached.value) return attached;
    const bytesOf = (suffix: string) => attached.value?.find(({ name }) => name.endsWith(suffix))?.bytes ?? null;
    const calendar = bytesOf("rechecks.ics");
    const cancelled = bytesOf("cancelled.ics");
    const { renderEmail } = await import("#render/email/email.js");
    const { value, problems } = await renderEmail(handout, {
      pdf: bytesOf(".pdf"),
      html: bytesOf(".html"),
      calendar: calendar && new TextDecoder().decode(calendar),
      cancelled,
    });
    const { document = "handout" } = options;
    return { value: value && [{ name: `${document}.eml`, bytes: value }], problems };
  },
};

/** RFC 5545, 3.6: a calendar holds at least one component. */
async function calendarOf(handout: Handout): Promise<string | undefined> {
  if (handout.events.length === 0) return undefined;
  const { renderCalendar } = await import("#render/calendar/calendar.js");
  const calendar = calendars.get(handout) ?? renderCalendar(handout);
  calendars.set(handout, calendar);
  return calendar;
}
/** The page for a screen carries the calendar that is a file of its own. */
const calendars = new WeakMap<Handout, string>();

const both = (one: Outcome<OutputFile[]>, other: Outcome<OutputFile[]> | null): Outcome<OutputFile[]> => ({
  value: [...(one.value ?? []), ...(other?.value ?? [])],
  problems: [],
});

const file = (name: string, text: string): Outcome<OutputFile[]> => ({
  value: [{ name, bytes: new TextEncoder().encode(text) }],
  problems: [],
});

/** A problem in words: what is wrong, and what to do about it, in a language (falling back to English). */
export const explain = (problem: Problem, house: House, language: string): { what: string; hint: string } =>
  tellProblem(problem, speak(house.locales, language));

/**
 * A topic a plan can name, and its name in a language. also: what staff look for it by, other words of the trade in that
 * language and in English; no owner reads them.
 */
export type Topic = { id: string; species: string[]; name: string; also: string };

/** The topics a plan can name, in the words of a language (falling back to English). */
export const topics = (house: House, language: string): Topic[] => {
  const { say } = speak(house.locales, language);
  const english = speak(house.locales, "en");
  return house.tables.care.topics.map(({ id, species }) => {
    const also = [say(`topics:${id}.also`), english.say(`topics:${id}.name`), english.say(`topics:${id}.also`)];
    return { id, species, name: say(`topics:${id}.name`), also: [...new Set(also)].join(", ") };
  });
};

/** A topic as staff would read it: what it asks of a plan, and every sentence it puts before an owner. */
export type TopicSheet = Choices["topics"][number] & TopicWords;

/** The sheet of a topic in a language, or null where there is no such topic. patient: what stands for the animal's name. */
export function topicSheet(house: House, id: string, language: string, patient: string): TopicSheet | null {
  const { topics, additions, statements } = house.tables.care;
  const topic = topics.find((one) => one.id === id);
  const choice = choicesOf(house.tables).topics.find((one) => one.id === id);
  if (!topic || !choice) return null;
  const said = { ...topic, ...alwaysSaid(topic, additions, statements) };
  return { ...choice, ...topicWords(said, statements, house.locales, { language, patient }) };
}

/** What a plan may name, and what each kind of care asks for. */
export const choices = (house: House): Choices => choicesOf(house.tables);

/** A language a handout can be written in, by its own name, and how far its translation is (LanguageStatus). */
export type Language = LanguageStatus & { tag: string; name: string };

/** How far the words of one language have been read; reviews: what the clinic has read itself. */
export const reviewOf = (
  { locales }: House,
  tag: string,
  reviews: readonly ClinicReview[] = [],
): LanguageStatus["state"] => stateOf(locales, tag, reviews);

/** The languages there are. reviews: the clinic's own, which count as a translator's do. */
export const languages = (house: House, reviews: readonly ClinicReview[] = []): Language[] =>
  house.locales.tags.map((tag) => ({
    tag,
    name: languageName(tag, tag),
    ...statusOf(house.locales, tag, reviews),
  }));

/** The language a handout asked for in some language would be written in, "pt-BR" for "pt-PT"; null where there is none. */
export const speaks = ({ locales }: House, asked: string): string | null => matchLanguage(asked, locales.tags);

/** What is wrong with a language as a translation, each with its place in its file; nothing in one that is whole. */
export const guardLanguage = (house: House, tag: string): Problem[] => guardTranslation(house.locales, tag);

/** The clinic's reviews with one more: of all that owners read in a language, as it is now. on: "2026-03-04". */
export const reviewLanguage = (
  house: House,
  reviews: readonly ClinicReview[],
  review: { language: string; by: string; on: string },
): ClinicReview[] => withClinicReview(house.locales, reviews, review);
