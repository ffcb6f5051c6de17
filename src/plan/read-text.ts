import { type Source, textOf } from "./text-of.js";
import { readYaml, type Written } from "./yaml.js";

/** A file as plain data with its places; text that cannot be read has no data, and problems that say why. */
export function readText(source: Source, prefix: string): Written {
  const text = textOf(source);
  return text.value === null
    ? { data: undefined, places: {}, problems: text.problems }
    : readYaml(source.file, text.value, prefix);
}

/** A field of plain data, whatever the data is. */
export const fieldOf = (data: unknown, name: string): unknown =>
  typeof data === "object" && data !== null && Object.hasOwn(data, name)
    ? (data as Record<string, unknown>)[name]
    : undefined;
