import { describe, expect, it } from "vitest";
import { choiceTitles, clinicWords, planWords } from "#plan/field-words.js";
import { clinicJsonSchema, planJsonSchema } from "#plan/json-schema.js";

type Node = {
  type?: unknown;
  const?: string;
  enum?: unknown;
  oneOf?: { const: string; title: string }[];
  description?: string;
  examples?: unknown[];
  properties?: Record<string, Node>;
  items?: Node;
  anyOf?: Node[];
};

/** Every field with the names on the way to it, in lists and alternatives too. */
function fields(node: Node, path: string[] = []): { path: string; field: Node }[] {
  const inner = [...(node.items ? [node.items] : []), ...(node.anyOf ?? [])].flatMap((one) => fields(one, path));
  return Object.entries(node.properties ?? {})
    .flatMap(([name, field]) => [{ path: [...path, name].join("/"), field }, ...fields(field, [...path, name])])
    .concat(inner);
}
function choices(node: Node): { const: string; title: string }[] {
  const below = [...Object.values(node.properties ?? {}), ...(node.items ? [node.items] : []), ...(node.anyOf ?? [])];
  return [...(node.oneOf ?? []), ...below.flatMap(choices)];
}
const holds = (node: Node, test: (node: Node) => boolean): boolean =>
  test(node) || [...(node.anyOf ?? []), ...(node.items ? [node.items] : [])].some((one) => holds(one, test));

describe.each([
  ["plan", planJsonSchema() as Node, planWords],
  ["clinic profile", clinicJsonSchema() as Node, clinicWords],
])("the schema of a %s", (_, schema, words) => {
  const all = fields(schema);

  it("says of every field what it is", () => {
    expect(all.length).toBeGreaterThan(40);
    expect(all.filter(({ field }) => !field.description).map(({ path }) => path)).toEqual([]);
  });

  it("shows of every field that is no map what it may look like, by examples or by choices", () => {
    const bare = all.filter(
      ({ field }) => !holds(field, (node) => Boolean(node.examples || node.oneOf || node.properties)),
    );
    expect(bare.map(({ path }) => path)).toEqual([]);
  });

  it("titles every choice", () => {
    const found = choices(schema);
    expect(found.length).toBeGreaterThan(8);
    expect(found.filter((one) => choiceTitles[one.const] === undefined)).toEqual([]);
    expect(JSON.stringify(schema)).not.toContain('"enum"');
  });

  it("has no words for a field that is not there", () => {
    const known = all.map(({ path }) => path);
    expect(Object.keys(words).filter((path) => !known.includes(path))).toEqual([]);
  });
});
