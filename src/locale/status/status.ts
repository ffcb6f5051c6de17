import { createHash } from "node:crypto";
import { isForStaff } from "../for-staff.js";
import type { Form } from "../guards/sentence.js";
import { sentencesOf } from "../guards/sentences.js";
import type { Locales } from "../locales.js";
import { baseOf, isOriginal } from "../source.js";
import type { ClinicReview, Reviewer, SentenceStatus } from "./kinds.js";
import { stampsOf } from "./stamps.js";

/**
 * How far a language is. complete: sentences that are there; stale: made from a source that has changed since, or from nobody
 * knows which; reviewed: those whose words, as they are now, somebody has read. state is of what owners read, and not of what
 * staff alone read: "reviewed" once a qualified translator or the clinic has read all of it.
 */
export type LanguageStatus = {
  state: "original" | "reviewed" | "unreviewed";
  sentences: number;
  complete: number;
  stale: string[];
  reviewed: Record<Exclude<Reviewer, "nobody"> | "clinic", number>;
};

/** The status of a language by its stamps (status.json) and a clinic's own reviews. */
export function statusOf(locales: Locales, tag: string, clinic: readonly ClinicReview[] = []): LanguageStatus {
  const original = isOriginal(tag, locales.tags);
  const sentences = statusesOf(locales, tag).map((one) => ({ ...one, byClinic: readBy(clinic, tag, one) }));
  const count = (test: (one: (typeof sentences)[number]) => boolean) => sentences.filter(test).length;
  const settled = sentences
    .filter(({ forOwners }) => forOwners)
    .every(({ words, stale, by, byClinic }) => words !== null && ((!stale && by === "qualified") || byClinic));
  return {
    state: original ? "original" : settled ? "reviewed" : "unreviewed",
    sentences: sentences.length,
    complete: count(({ words }) => words !== null),
    stale: original ? [] : sentences.filter(({ words, stale }) => words !== null && stale).map(({ name }) => name),
    reviewed: {
      fluent: count(({ stale, by }) => !stale && by === "fluent"),
      qualified: count(({ stale, by }) => !stale && by === "qualified"),
      clinic: count(({ byClinic }) => byClinic),
    },
  };
}

/**
 * Its state alone: where nobody qualified has read a sentence, and the clinic none, no sentence is looked at. Of a language
 * that is not there, nobody has.
 */
export function stateOf(locales: Locales, tag: string, clinic: readonly ClinicReview[]): LanguageStatus["state"] {
  if (!locales.tags.includes(tag)) return "unreviewed";
  if (isOriginal(tag, locales.tags)) return "original";
  const written = (locales.own?.written[tag] ?? []).length > 0;
  const stamps = [tag, baseOf(tag, locales.tags)].map((each) => locales.texts[`locales/${each}/status.json`]);
  const isRead =
    written || stamps.some((text) => text?.includes(' qualified"')) || clinic.some(({ language }) => language === tag);
  return isRead ? statusOf(locales, tag, clinic).state : "unreviewed";
}

const known = new WeakMap<Locales, Map<string, SentenceStatus[]>>();

/** Every sentence of the source with its status in a language; a variant's are its base's where it says nothing itself. */
export function statusesOf(locales: Locales, tag: string): SentenceStatus[] {
  const made = known.get(locales)?.get(tag) ?? readStatuses(locales, tag);
  known.set(locales, new Map([...(known.get(locales) ?? []), [tag, made]]));
  return made;
}

function readStatuses(locales: Locales, tag: string): SentenceStatus[] {
  return locales.own ? ownStatuses(locales, locales.own, tag) : ourStatuses(locales, tag);
}

/** What a clinic says otherwise is its own; how far our words were read is told of our source, whatever the clinic says there. */
function ownStatuses(locales: Locales, { written, ours }: NonNullable<Locales["own"]>, tag: string): SentenceStatus[] {
  const names = new Set(written[tag]);
  const words = new Map(sentencesOf(locales, tag).map(({ name, own }) => [name, hashOf(own)]));
  return statusesOf(ours, tag).map((one): SentenceStatus => {
    if (!names.has(one.name)) return one;
    return { ...one, words: words.get(one.name) ?? null, stale: false, by: "nobody", own: true };
  });
}

function ourStatuses(locales: Locales, tag: string): SentenceStatus[] {
  const stamps = stampsOf(locales, tag);
  const base = baseOf(tag, locales.tags);
  const inherited = new Map(base ? statusesOf(locales, base).map((one) => [one.name, one]) : []);
  return sentencesOf(locales, tag)
    .filter(({ source }) => source.length > 0)
    .map((sentence) => {
      const { name, source, own } = sentence;
      const fromBase = own.length === 0 ? inherited.get(name) : undefined;
      if (fromBase) return fromBase;
      const [from, words] = [hashOf(source), own.length > 0 ? hashOf(own) : null];
      const stamp = stamps[name];
      const by = stamp && stamp.words === words ? stamp.by : "nobody";
      return { name, forOwners: !isForStaff(name), from, words, stale: stamp?.from !== from, by };
    });
}

/** The same forms have the same hash, in whatever order a file has them. Changes are to be seen, not attacks withstood. */
const hashOf = (forms: readonly Form[]): string =>
  createHash("sha256")
    .update(JSON.stringify(forms.map(({ path, text }) => [path.at(-1), text]).sort()))
    .digest("hex")
    .slice(0, 10);

/** The names of the sentences that a clinic has read as they are now. */
export const readByClinic = (locales: Locales, tag: string, clinic: readonly ClinicReview[]): Set<string> =>
  new Set(statusesOf(locales, tag).flatMap((one) => (readBy(clinic, tag, one) ? [one.name] : [])));

/** What it wrote itself, it has read. */
const readBy = (clinic: readonly ClinicReview[], tag: string, { name, words, own }: SentenceStatus): boolean =>
  own === true ||
  (words !== null && clinic.some((review) => review.language === tag && review.sentences[name] === words));
