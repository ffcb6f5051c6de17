/**
 * Words as a calendar may hold them: every line break is "\n", and there is no other control character (RFC 5545, 3.3.11).
 * U+0085, U+2028 and U+2029 are line breaks too: some readers end a content line there, and what follows would be a property.
 */
export const plain = (text: string): string =>
  text
    .replace(/\r\n|[\r\u0085\u2028\u2029]/gu, "\n")
    .replace(/[^\P{Cc}\t\n]/gu, "")
    .replace(/\p{Surrogate}/gu, "\ufffd");

/** Words as the value of a parameter, which holds no quote and no line break (RFC 5545, 3.1). */
export const inQuotes = (text: string): string =>
  plain(text)
    .replace(/[\n\t]+/g, " ")
    .replaceAll('"', "'");
