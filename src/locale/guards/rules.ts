import type { Locales } from "../locales.js";
import { source } from "../source.js";

/**
 * What the guards must know of a language. words: English words it may use; longer: sentences that may be long, each with
 * its reason; units: its own signs for units, by the source's. english: words that give English away.
 */
export type Rules = {
  tag: string;
  script: string;
  plurals: string[];
  isSource: boolean;
  words: ReadonlySet<string>;
  longer: Record<string, string>;
  units: Record<string, string[]>;
  english: ReadonlySet<string>;
};

/** Reads locales/<tag>/guard.json; a language without one is allowed nothing. */
export function rulesOf(locales: Locales, tag: string): Rules {
  const own = guardOf(locales, tag);
  const locale = new Intl.Locale(tag).maximize();
  return {
    tag,
    script: locale.script ?? "Latn",
    plurals: new Intl.PluralRules(tag).resolvedOptions().pluralCategories,
    isSource: locale.language === source,
    words: new Set(own.words?.map((word) => word.toLowerCase())),
    longer: own.longer ?? {},
    units: own.units ?? {},
    english: new Set(guardOf(locales, source).english),
  };
}

type GuardFile = {
  words?: string[];
  longer?: Record<string, string>;
  units?: Record<string, string[]>;
  english?: string[];
};

const guardOf = ({ texts }: Locales, tag: string): GuardFile =>
  JSON.parse(texts[`locales/${tag}/guard.json`] ?? "{}") as GuardFile;
