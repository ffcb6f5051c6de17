/**
 * The language we have that best serves the one asked for, or null.
 *
 * 1. Itself, or itself without its last subtags: es-MX is served by es (RFC 4647, 3.4, lookup).
 * 2. English of a country that does not write as the United States do is served by en-GB, where we have it.
 * 3. Else what is of the same language and script, as likely subtags tell them (UTS #35): zh, zh-CN and zh-SG are served by
 *    zh-Hans, pt-PT by pt-BR. Never another script: zh-TW is written in Hant.
 */
export function matchLanguage(asked: string, have: readonly string[]): string | null {
  const found = lookUp(asked, have);
  if (found !== null) return isWorldEnglish(asked) && found === "en" && have.includes(british) ? british : found;
  const wanted = likely(asked);
  return have.find((tag) => isAlike(likely(tag), wanted)) ?? null;
}

/** Itself, or itself without its last subtags (RFC 4647, 3.4). */
export function lookUp(asked: string, have: readonly string[]): string | null {
  for (let subtags = asked.split("-"); subtags.length > 0; subtags = subtags.slice(0, -1)) {
    const wanted = subtags.join("-").toLowerCase();
    const found = have.find((tag) => tag.toLowerCase() === wanted);
    if (found) return found;
  }
  return null;
}

const british = "en-GB";
/** Where English is nearer to that of the United States (CLDR 48, languageMatching, the variable $enUS). */
const asTheStates = new Set(["AS", "CA", "GU", "MH", "MP", "PH", "PR", "UM", "US", "VI"]);
const isWorldEnglish = (tag: string): boolean => {
  const { language, region } = new Intl.Locale(tag);
  return language === "en" && region !== undefined && !asTheStates.has(region);
};

/** null where the words asked for are no language tag. */
const likely = (tag: string): Intl.Locale | null => {
  try {
    return new Intl.Locale(tag).maximize();
  } catch {
    return null;
  }
};
const isAlike = (one: Intl.Locale | null, other: Intl.Locale | null): boolean =>
  one !== null && one.language === other?.language && one.script === other.script;

/**
 * The same for the owners of a clinic in some country ("GB"): where the tag names no country, the words of the clinic's own
 * are used, if we have them.
 */
export function matchFor(asked: string, have: readonly string[], country: string | undefined): string | null {
  const found = matchLanguage(asked, have);
  const there = found && matchLanguage(regional(asked, country), have);
  return there?.startsWith(`${found}-`) ? there : found;
}

/** The tag dates and numbers are written in: the language as the clinic's country writes it, unless it names a country. */
export function regional(tag: string, country: string | undefined): string {
  const locale = new Intl.Locale(tag);
  return locale.region || !country ? tag : new Intl.Locale(tag, { region: country }).toString();
}
