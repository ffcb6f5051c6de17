/**
 * The language we have that best serves the one that was asked for: itself ("es-MX"), else its plain language ("es"),
 * else null (RFC 4647, lookup: drop subtags from the end).
 */
export function matchLanguage(asked: string, have: readonly string[]): string | null {
  for (let subtags = asked.split("-"); subtags.length > 0; subtags = subtags.slice(0, -1)) {
    const wanted = subtags.join("-").toLowerCase();
    const found = have.find((tag) => tag.toLowerCase() === wanted);
    if (found) return found;
  }
  return null;
}

/** The tag dates and numbers are written in: the language as the clinic's country writes it, unless it names a country. */
export function regional(tag: string, country: string | undefined): string {
  const locale = new Intl.Locale(tag);
  return locale.region || !country ? tag : new Intl.Locale(tag, { region: country }).toString();
}
