/**
 * hearthsheet: text -> plan -> facts -> handout -> bytes.
 *
 * The plan is what was said. Facts are what follows. The handout is what we tell them. Bytes are how it looks.
 * Each stage takes plain data and gives an Outcome: its result, unless something stops it, and every problem it found.
 */
import { compose as composeHandout } from "#compose/compose.js";
import { type Document, openTemplates, type Templates } from "#compose/templates.js";
import { compute as computeFacts } from "#compute/compute.js";
import type { Facts } from "#compute/facts.js";
import { revise as revisePlan } from "#compute/revise/revise.js";
import type { Handout } from "#handout/handout.js";
import { languageName } from "#locale/language-name.js";
import { type Locales, openLocales } from "#locale/locales.js";
import { tellProblem } from "#locale/tell.js";
import { speak } from "#locale/voice.js";
import type { Edit, Plan, VisitEntry } from "#plan/plan.js";
import type { Outcome, Problem } from "#problems/problem.js";
import { openTables, type Tables } from "#tables/tables.js";

export { editPlan } from "#plan/edit-plan.js";
export { planJsonSchema } from "#plan/json-schema.js";
export { clinicPath, pricesPath, type Sources } from "#plan/read-clinic.js";
export { readPlan } from "#plan/read-plan.js";
export { staffLanguage } from "#plan/staff-language.js";
export type { Source } from "#plan/text-of.js";
export { mergeVisit } from "#plan/visit-entry.js";
export { type Reason, settle } from "#problems/settle.js";
export { reviseEvents } from "#render/calendar/revise.js";
export { renderRecord as record } from "#render/record/record.js";
export type { Document, Edit, Facts, Handout, Outcome, Plan, Problem };

/** Font files: TrueType for the page, WOFF2 for the screen. */
export type Fonts = Record<"pdfRegular" | "pdfBold" | "webRegular" | "webBold", Uint8Array>;
/** All that ships with the tool, checked once: tables, templates, words and fonts. */
export type House = { tables: Tables; templates: Templates; locales: Locales; fonts: Fonts };

export const formats = ["pdf", "html", "text", "ics", "sms", "eml"] as const;
export type Format = (typeof formats)[number];
/** document: the name of the files, "handout" unless it is the estimate alone. */
export type RenderOptions = {
  paper: "letter" | "a4";
  large: boolean;
  formats: readonly Format[];
  document?: Document | undefined;
};
export type OutputFile = { name: string; bytes: Uint8Array };

/** files: by path, "templates/handout/handout.hbs", "locales/es/handout.json", "shared/visits.json", "fonts/pdf-bold.ttf". */
export function openHouse(files: Record<string, Uint8Array>): Outcome<House> {
  const decoder = new TextDecoder();
  const texts = (folder: string) =>
    Object.fromEntries(
      Object.entries(files)
        .filter(([path]) => path.startsWith(folder))
        .map(([path, bytes]) => [path, decoder.decode(bytes)]),
    );
  const tables = openTables(texts("shared/"));
  const locales = openLocales(texts("locales/"));
  const problems = [...tables.problems, ...locales.problems];
  if (!tables.value || !locales.value) return { value: null, problems };
  const templates = openTemplates(texts("templates/"), locales.value);
  problems.push(...templates.problems);
  if (!templates.value) return { value: null, problems };
  const font = (name: string) => files[`fonts/${name}`] ?? new Uint8Array();
  const fonts = {
    pdfRegular: font("pdf-regular.ttf"),
    pdfBold: font("pdf-bold.ttf"),
    webRegular: font("web-regular.woff2"),
    webBold: font("web-bold.woff2"),
  };
  return { value: { tables: tables.value, templates: templates.value, locales: locales.value, fonts }, problems };
}

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
  revisePlan(plan, facts, entry, house.tables.visits);

/** The facts put into words: a document tree in one language (a BCP 47 tag). document: the handout, or its estimate alone. */
export const compose = (
  facts: Facts,
  house: House,
  { language, document = "handout", staffToo = false }: ComposeOptions,
): Outcome<Handout> =>
  composeHandout(facts, { language, document, staffToo, templates: house.templates, locales: house.locales });

/** staffToo: the e-mail also says it in the language of the clinic's staff. */
export type ComposeOptions = { language: string; document?: Document | undefined; staffToo?: boolean | undefined };

/** Draws the handout in each format. Renderers are loaded only when they are asked for. */
export async function render(handout: Handout, house: House, options: RenderOptions): Promise<Outcome<OutputFile[]>> {
  const drawn = await Promise.all(options.formats.map((format) => renderers[format](handout, house, options)));
  const problems = drawn.flatMap((outcome) => outcome.problems);
  const whole = drawn.every(({ value }) => value !== null);
  return { value: whole ? drawn.flatMap(({ value }) => value ?? []) : null, problems };
}

type Renderer = (handout: Handout, house: House, options: RenderOptions) => Promise<Outcome<OutputFile[]>>;

const renderers: Record<Format, Renderer> = {
  async pdf(handout, { fonts }, { paper, large, document = "handout" }) {
    const { renderPdf } = await import("#render/pdf/pdf.js");
    const page = { paper, large, fonts: { regular: fonts.pdfRegular, bold: fonts.pdfBold } };
    const { value, problems } = await renderPdf(handout, page);
    return { value: value && [{ name: `${document}.pdf`, bytes: value }], problems };
  },
  async html(handout, { fonts }, { document = "handout" }) {
    const { renderHtml } = await import("#render/html/html.js");
    const web = { regular: fonts.webRegular, bold: fonts.webBold };
    return file(`${document}.html`, renderHtml(handout, { fonts: web, calendar: await calendarOf(handout) }));
  },
  async text(handout, _house, { document = "handout" }) {
    const { renderText } = await import("#render/text/text.js");
    return file(`${document}.txt`, renderText(handout));
  },
  async sms(handout) {
    const { renderSms } = await import("#render/sms/sms.js");
    const text = renderSms(handout);
    return text === "" ? { value: [], problems: [] } : file("messages.txt", text);
  },
  async ics(handout) {
    const calendar = await calendarOf(handout);
    return calendar === undefined ? { value: [], problems: [] } : file("rechecks.ics", calendar);
  },
  async eml(handout, house, options) {
    const attached = await render(handout, house, { ...options, formats: ["pdf", "html", "ics"] });
    if (!attached.value) return attached;
    const bytesOf = (suffix: string) => attached.value?.find(({ name }) => name.endsWith(suffix))?.bytes ?? null;
    const calendar = bytesOf(".ics");
    const { renderEmail } = await import("#render/email/email.js");
    const { value, problems } = await renderEmail(handout, {
      pdf: bytesOf(".pdf"),
      html: bytesOf(".html"),
      calendar: calendar && new TextDecoder().decode(calendar),
    });
    const { document = "handout" } = options;
    return { value: value && [{ name: `${document}.eml`, bytes: value }], problems };
  },
};

/** RFC 5545, 3.6: a calendar holds at least one component. */
async function calendarOf(handout: Handout): Promise<string | undefined> {
  if (handout.events.length === 0) return undefined;
  const { renderCalendar } = await import("#render/calendar/calendar.js");
  return renderCalendar(handout);
}

const file = (name: string, text: string): Outcome<OutputFile[]> => ({
  value: [{ name, bytes: new TextEncoder().encode(text) }],
  problems: [],
});

/** A problem in words: what is wrong, and what to do about it, in a language (falling back to English). */
export const explain = (problem: Problem, house: House, language: string): { what: string; hint: string } =>
  tellProblem(problem, speak(house.locales, language));

/** The topics a plan can name, each named in a language (falling back to English). */
export const topics = (house: House, language: string): { id: string; species: string[]; name: string }[] => {
  const { say } = speak(house.locales, language);
  return house.tables.care.topics.map(({ id, species }) => ({ id, species, name: say(`topics:${id}.name`) }));
};

/** The languages a handout can be written in, each by its own name; status: "original", "reviewed" or "unreviewed". */
export const languages = (house: House): { tag: string; name: string; status: string }[] =>
  house.locales.tags.map((tag) => ({
    tag,
    name: languageName(tag, tag),
    status: speak(house.locales, tag).say("language:status"),
  }));
