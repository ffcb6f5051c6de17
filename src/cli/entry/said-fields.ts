/** Fields in the words of a plan, "name" -> "carprofen"; and the first words that name no field, if there are any. */
export type Said = { fields: Record<string, string>; unknown: string | null };
/** What a text begins with: the fields that says, and how much of the text it is. */
export type Found = { fields: Record<string, string>; length: number };

/**
 * One line of a plan in short: "carprofen, tablet 100 mg, dose 4.4 mg/kg" says {name, tablet, dose}. Each part begins with the
 * name of its field, as a plan writes it; what bare finds at the start of a part comes first, for words that need none. A field
 * that is said twice is not understood the second time.
 */
export function saidFields(
  line: string,
  fields: readonly string[],
  bare: (rest: string, said: Record<string, string>) => Found | null,
): Said {
  const said: Record<string, string> = {};
  const find = (rest: string) => bare(rest, said) ?? named(rest, fields);
  // A comma between two digits is of a number.
  for (const part of line.split(/(?<!\d),|,(?!\d)/)) {
    for (let rest = part.trim(); rest !== ""; ) {
      const found = find(rest);
      if (!found) return { fields: said, unknown: wordsUntil(rest, (words) => find(words) !== null) };
      if (Object.keys(found.fields).some((field) => said[field] !== undefined))
        return { fields: said, unknown: rest.slice(0, found.length) };
      Object.assign(said, found.fields);
      rest = rest.slice(found.length).trimStart();
    }
  }
  return { fields: said, unknown: null };
}

/** The words that text begins with, up to those that something begins with; the first is never looked at. */
export function wordsUntil(text: string, begins: (rest: string) => boolean): string {
  const gaps = [...text.matchAll(/\s+/g)].map(({ index, 0: { length } }) => ({ index, next: index + length }));
  return text.slice(0, gaps.find(({ next }) => begins(text.slice(next)))?.index ?? text.length);
}

/** "last given 09:00" is the field "last given", and no field "last". Its value is all that follows. */
function named(part: string, fields: readonly string[]): Found | null {
  const field = fields
    .toSorted((a, b) => b.length - a.length)
    .find((field) => new RegExp(`^${field}(:|\\s)`, "i").test(part));
  if (field === undefined) return null;
  return { fields: { [field]: part.slice(field.length).replace(/^:?\s*/, "") }, length: part.length };
}

/** The fields in the order a plan has them. */
export const inOrder = (said: Record<string, string>, fields: readonly string[]): Record<string, string> =>
  Object.fromEntries(fields.flatMap((field) => (said[field] === undefined ? [] : [[field, said[field]]])));

/** "a; b" as its parts. */
export const listed = (text: string): string[] =>
  text
    .split(/[;\n]/)
    .map((part) => part.trim().replace(/\s*,$/, ""))
    .filter((part) => part !== "");
