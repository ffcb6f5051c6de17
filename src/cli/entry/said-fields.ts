/** Fields in the words of a plan, "name" -> "carprofen"; and the first part that names no field, if there is one. */
export type Said = { fields: Record<string, string>; unknown: string | null };

/**
 * One line of a plan in short: "carprofen, tablet 100 mg, dose 4.4 mg/kg" says {name, tablet, dose}. Each part begins with the
 * name of its field, as a plan writes it; what bare makes of a part comes first, for parts that need none.
 */
export function saidFields(
  line: string,
  fields: readonly string[],
  bare: (part: string, said: Record<string, string>) => Record<string, string> | null,
): Said {
  const said: Record<string, string> = {};
  for (const part of line.split(",").map((part) => part.trim())) {
    if (part === "") continue;
    const found = bare(part, said) ?? named(part, fields);
    if (!found) return { fields: said, unknown: part };
    Object.assign(said, found);
  }
  return { fields: said, unknown: null };
}

/** "last given 09:00" is the field "last given", and no field "last". */
function named(part: string, fields: readonly string[]): Record<string, string> | null {
  const field = fields
    .toSorted((a, b) => b.length - a.length)
    .find((field) => new RegExp(`^${field}(:|\\s)`, "i").test(part));
  return field === undefined ? null : { [field]: part.slice(field.length).replace(/^:?\s*/, "") };
}

/** The fields in the order a plan has them. */
export const inOrder = (said: Record<string, string>, fields: readonly string[]): Record<string, string> =>
  Object.fromEntries(fields.flatMap((field) => (said[field] === undefined ? [] : [[field, said[field]]])));

/** "a; b" as its parts. */
export const listed = (text: string): string[] =>
  text
    .split(/[;\n]/)
    .map((part) => part.trim())
    .filter((part) => part !== "");
