import { Document, isMap, isSeq, Pair, Scalar, YAMLMap } from "yaml";

/** Text, lists and maps of it, as a clinician would write them. */
export type Yaml = string | readonly Yaml[] | { readonly [field: string]: Yaml };

/**
 * One field of a new file, with what is said above it. Without a value the comment stands alone: it may show how a field is
 * written that somebody has yet to fill in.
 */
export type Entry = { comment?: string | undefined; field?: string; value?: Yaml };

/** The first line of a file, by which editors find its JSON Schema (yaml-language-server). */
export const modeline = (schema: string): string => `yaml-language-server: $schema=${schema}`;

/**
 * The text of a new file, a comment above each field that has one. Scalars are written as they are (the failsafe schema), so
 * that 150.00 stays 150.00; what would read as anything else is quoted. Short maps stand on one line, unless each field of
 * them is wanted on its own.
 */
export function newFile(entries: readonly Entry[], { onOneLine = true } = {}): string {
  const document = new Document(null, { schema: "failsafe" });
  const map = new YAMLMap(document.schema);
  let above: string[] = [];
  for (const { comment, field, value } of entries) {
    if (comment) above.push(...comment.split("\n"));
    if (field === undefined || value === undefined) continue;
    const key = new Scalar(field);
    if (above.length > 0) key.commentBefore = above.map(commented).join("\n");
    above = [];
    map.items.push(new Pair(key, onOneLine ? tidy(document, value) : document.createNode(value)));
  }
  document.contents = map as unknown as typeof document.contents;
  if (above.length > 0) document.comment = above.map(commented).join("\n");
  return `${document.toString({ lineWidth: 0 }).trimEnd()}\n`;
}

/** A comment ends with its line, whatever characters it holds. */
const commented = (line: string): string => (line === "" ? "" : ` ${line.replace(/[\p{Cc}\p{Zl}\p{Zp}]/gu, " ")}`);

function tidy(document: Document, value: Yaml) {
  const node = document.createNode(value);
  if (isMap(node) && oneLine(value)) node.flow = true;
  if (isSeq(node)) for (const item of node.items) if (isMap(item) && oneLine(item.toJSON())) item.flow = true;
  return node;
}

/** A map of a few short words, as plans are written by hand. */
const oneLine = (value: unknown): boolean =>
  Object.values(value as object).every((inner) => typeof inner === "string") && JSON.stringify(value).length < 100;
