/** The language every sentence is first written in. It needs no translation, and so no review of one. */
export const source = "en";

/** The language a variant is a variant of, of those there are: "en" for "en-GB"; null where the tag stands alone. */
export function baseOf(tag: string, tags: readonly string[]): string | null {
  for (let subtags = tag.split("-").slice(0, -1); subtags.length > 0; subtags = subtags.slice(0, -1)) {
    const shorter = subtags.join("-");
    if (tags.includes(shorter)) return shorter;
  }
  return null;
}

/** Whether the words of a language are the source's own, or a variant of them. */
export const isOriginal = (tag: string, tags: readonly string[]): boolean =>
  tag === source || baseOf(tag, tags) === source;
