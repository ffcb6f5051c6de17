import { inOrder, type Said, saidFields } from "./said-fields.js";

export const collarFields = ["type", "neck", "muzzle", "length", "until"];

/** "neck 41 cm, length 20 cm, until bandage off"; bare measures are the neck and then the length, a bare kind its type. */
export function collarLine(line: string, kinds: readonly string[]): Said {
  const said = saidFields(line, collarFields, (part, before) => {
    const whole = (field: string, value: string) => ({ fields: { [field]: value }, length: part.length });
    // The question says nose, and a plan calls it length.
    const [said, name = "", measure = ""] =
      /^(neck|nose|length|muzzle):?\s+(\d+(?:[.,]\d+)?(?:\s*(?:cm|mm|in)\b)?)/i.exec(part) ?? [];
    if (said) return { fields: { [name.toLowerCase().replace("nose", "length")]: measure }, length: said.length };
    if (kinds.includes(part.toLowerCase())) return whole("type", part.toLowerCase());
    if (!/^\d+([.,]\d+)?\s*\p{L}*$/u.test(part)) return null;
    if (before["neck"] === undefined) return whole("neck", part);
    return before["length"] === undefined ? whole("length", part) : null;
  });
  // A measure alone is told with the word before it.
  const unknown = line.split(",").find((part) => said.unknown !== null && part.trim().startsWith(said.unknown));
  return { fields: inOrder(said.fields, collarFields), unknown: unknown?.trim() ?? said.unknown };
}
