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
  // A comma between two digits is of a number.
  for (const part of line.split(/(?<!\d),|,(?!\d)/)) {
    for (let rest = part.trim(); rest !== ""; ) {
      const found = bare(rest, said) ?? named(rest, fields);
      if (!found || Object.keys(found.fields).some((field) => said[field] !== undefined))
        return {
          fields: said,
          unknown: found ? rest.slice(0, found.length) : untilKnown(rest, (at) => bare(at, said) ?? named(at, fields)),
        };
      Object.assign(said, found.fields);
      rest = rest.slice(found.length).trimStart();
    }
  }
  return { fields: said, unknown: null };
}

/** Words that say nothing, up to those that do. */
function untilKnown(rest: string, find: (rest: string) => Found | null): string {
  const words = [...rest.matchAll(/\s+/g)].map(({ index, 0: { length } }) => ({ index, next: index + length }));
  return rest.slice(0, words.find(({ next }) => find(rest.slice(next)) !== null)?.index ?? rest.length);
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
