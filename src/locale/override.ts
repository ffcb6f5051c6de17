import { nearest } from "#problems/near.js";
import type { Place } from "#problems/place.js";
import { type Outcome, type Problem, problem, stops } from "#problems/problem.js";
import { isForStaff } from "./for-staff.js";
import { checkFigures } from "./guards/figures.js";
import { checkMarkup } from "./guards/markup.js";
import { placeInJson } from "./guards/place.js";
import { checkContexts, checkPlurals } from "./guards/plurals.js";
import { type Rules, rulesOf } from "./guards/rules.js";
import { type Form, formsOf, type Sentence } from "./guards/sentence.js";
import { checkValues } from "./guards/values.js";
import { type Locales, type Messages, openLocales, parseMessages } from "./locales.js";
import { source } from "./source.js";

/** A file of texts that a clinic says otherwise. path: of the file of ours, "locales/es/handout.json"; file: the name to tell problems by. */
export type OwnTexts = { path: string; file: string; text: string };

/** Our words with a clinic's laid over them. said: the sentences that each file says otherwise, by path. */
export type LaidTexts = { locales: Locales; said: Record<string, string[]> };

/**
 * Lays a clinic's own sentences over ours; each stands in the place of ours with all its forms. One must be a sentence that we
 * have, show the same values, have the plurals of its language, be words and no markup, and not be empty. Problems:
 * "override-unknown", "locale-syntax", "override-empty", "translation-values", "translation-plurals", "translation-contexts",
 * "translation-markup"; "override-figures" asks why a sentence that owners read has other figures than ours;
 * "override-elsewhere" notes a variant that goes on saying it its own way.
 */
export function overrideTexts(under: Locales, files: readonly OwnTexts[]): Outcome<LaidTexts> {
  const ours = under.own?.ours ?? under;
  if (files.length === 0) return { value: { locales: ours, said: {} }, problems: [] };
  const problems: Problem[] = [];
  const notes: Problem[] = [];
  const texts = { ...ours.texts };
  const said: LaidTexts["said"] = {};
  const written: Record<string, string[]> = {};
  for (const file of files) {
    const { value: own, problems: wrong } = readOwn(ours, file);
    problems.push(...wrong);
    if (!own) continue;
    notes.push(...saidElsewhere(ours, file, own, files));
    texts[file.path] = laidOver(ours.texts[file.path] ?? "{}", own.sentences);
    said[file.path] = own.sentences.map(({ name }) => name);
    written[own.tag] = [...(written[own.tag] ?? []), ...(said[file.path] ?? [])];
  }
  if (stops(problems)) return { value: null, problems };
  const laid = openLocales(texts);
  return {
    value: laid.value && { locales: { ...laid.value, own: { written, ours } }, said },
    problems: [...problems, ...notes, ...laid.problems],
  };
}

type Own = { tag: string; sentences: Sentence[] };

function readOwn(ours: Locales, { path, file, text }: OwnTexts): Outcome<Own> {
  const start: Place = { file, line: 1, column: 1, length: 1 };
  const refuse = (found: Problem): Outcome<Own> => ({ value: null, problems: [found] });
  const [, tag = "", name = ""] = /^locales\/([^/]+)\/(.+)$/.exec(path) ?? [];
  const model = ours.texts[`locales/${source}/${name}`];
  if (!ours.tags.includes(tag) || model === undefined || !isMessages(name)) {
    const known = ours.tags.flatMap((each) => messageFiles(ours).map((other) => `locales/${each}/${other}`));
    return refuse(problem("override-unknown", start, { name: path, near: nearest(path, known) }));
  }
  const read = parseMessages(text);
  if ("detail" in read) return refuse(problem("locale-syntax", start, { detail: read.detail }));
  const sources = formsIn(model);
  const namespace = name.replace(/[/.].*$/, "");
  const rules = rulesOf(ours, tag);
  const problems: Problem[] = [];
  const sentences = [...formsOf(read.messages)].map(
    ([stem, own]): Sentence => ({ name: `${namespace}:${stem}`, file, source: sources.get(stem) ?? [], own }),
  );
  for (const sentence of sentences) {
    const at = (form: Form | null) => placeInJson(file, text, (form ?? sentence.own[0])?.path ?? []);
    problems.push(...(isKnown(sentence) ? wrongIn(sentence, rules, at) : [unknown(sentence, [...sources.keys()], at)]));
  }
  return { value: { tag, sentences }, problems };
}

/** A variant with a sentence of its own ("en-GB") goes on saying that, unless the clinic has one for it too. */
function saidElsewhere(ours: Locales, { path, file, text }: OwnTexts, own: Own, files: readonly OwnTexts[]): Problem[] {
  const variants = ours.tags.filter((tag) => tag.startsWith(`${own.tag}-`));
  const stemOf = (name: string) => name.slice(name.indexOf(":") + 1);
  return variants.flatMap((language) => {
    const beside = path.replace(`/${own.tag}/`, `/${language}/`);
    const theirs = formsIn(ours.texts[beside] ?? "{}");
    const read = parseMessages(files.find((other) => other.path === beside)?.text ?? "{}");
    const written = "detail" in read ? new Map<string, Form[]>() : formsOf(read.messages);
    const unsaid = own.sentences.filter(({ name }) => theirs.has(stemOf(name)) && !written.has(stemOf(name)));
    return unsaid.map(({ name, own: forms }) =>
      problem("override-elsewhere", placeInJson(file, text, forms[0]?.path ?? []), { key: name, language }),
    );
  });
}

const formsIn = (text: string): Map<string, Form[]> => formsOf(JSON.parse(text) as Messages);

/** What lies beside the words is none. */
const isMessages = (file: string): boolean => file.endsWith(".json") && !["guard.json", "status.json"].includes(file);
const messageFiles = ({ texts }: Locales): string[] =>
  Object.keys(texts)
    .filter((path) => path.startsWith(`locales/${source}/`))
    .map((path) => path.slice(`locales/${source}/`.length))
    .filter(isMessages);

/** A sentence of ours, its forms named as we name them. */
const isKnown = ({ source, own }: Sentence): boolean =>
  source.length > 0 && own.every((form) => form.path.at(-1) === keyOf(form));

const keyOf = ({ path, context, plural }: Form): string =>
  [path.at(-1)?.split("_")[0], context, plural].filter((part) => part !== "").join("_");

const unknown = ({ name, own }: Sentence, known: readonly string[], at: (form: Form | null) => Place): Problem => {
  const strange = own.find((form) => form.path.at(-1) !== keyOf(form)) ?? null;
  const [, stem = ""] = name.split(":");
  const given = strange?.path.join(".") ?? stem;
  return problem("override-unknown", at(strange), { name: given, near: nearest(given, known) });
};

const guards = [checkPlurals, checkContexts, checkValues, checkMarkup];

function wrongIn(sentence: Sentence, rules: Rules, at: (form: Form | null) => Place): Problem[] {
  const found = guards.flatMap((guard) => guard(sentence, rules));
  const figures = isForStaff(sentence.name) ? [] : checkFigures(sentence, rules);
  return [
    ...emptyIn(sentence).map((form) => problem("override-empty", at(form), { key: sentence.name })),
    ...found.map(({ form, found: { code, values } }) => problem(code, at(form), values as never)),
    ...figures.map(({ form, found: { values } }) =>
      problem("override-figures", at(form), { language: rules.tag, ...(values as Figures) }),
    ),
  ];
}

type Figures = { key: string; wanted: string[]; found: string[] };

/** Forms that say nothing, where ours has a word or a value. */
const emptyIn = ({ source, own }: Sentence): Form[] => {
  const says = ({ text }: Form) => /[\p{L}{]/u.test(text);
  return source.every(says) ? own.filter((form) => !says(form)) : [];
};

/** The text of a file of ours, its sentences in the place of ours with all their forms. */
function laidOver(text: string, sentences: readonly Sentence[]): string {
  const messages = JSON.parse(text) as Messages;
  const before = formsOf(messages);
  for (const { name, own } of sentences) {
    for (const { path } of before.get(name.slice(name.indexOf(":") + 1)) ?? [])
      delete holderOf(messages, path)[path.at(-1) ?? ""];
    for (const { path, text } of own) holderOf(messages, path)[path.at(-1) ?? ""] = text;
  }
  return `${JSON.stringify(messages, null, 2)}\n`;
}

/** The object that holds the message of a path. Every path is one of the source's, so none leads into a prototype. */
function holderOf(messages: Messages, path: readonly string[]): Messages {
  let holder = messages;
  for (const key of path.slice(0, -1)) {
    const inner = Object.hasOwn(holder, key) ? holder[key] : undefined;
    const next: Messages = typeof inner === "object" ? inner : {};
    holder[key] = next;
    holder = next;
  }
  return holder;
}
