import { z } from "zod";
import { clinicSchema } from "./clinic-schema.js";
import { choiceTitles, clinicWords, type FieldWords, planWords } from "./field-words.js";
import { planSchema } from "./schema.js";

/** A JSON Schema, as far as it is walked here. */
type Node = {
  type?: unknown;
  enum?: string[];
  oneOf?: { const: string; title: string }[];
  description?: string;
  examples?: unknown[];
  properties?: Record<string, Node>;
  items?: Node;
  anyOf?: Node[];
};

/**
 * The plan's JSON Schema (2020-12), for editors: what may be written, before it is read. Every field says what it is, with
 * examples or with choices that have titles.
 * An unquoted 150.00 is a number to an editor and text to us, so every text may be written as a number.
 */
export function planJsonSchema(): object {
  const profile = Object.entries(clinicWords).map(([path, words]) => [`clinic/${path}`, words] as const);
  return written(planSchema, { ...Object.fromEntries(profile), ...planWords });
}

/** The same of a clinic profile. */
export const clinicJsonSchema = (): object => written(clinicSchema, clinicWords);

function written(schema: z.ZodType, words: Record<string, FieldWords>): object {
  const made = z.toJSONSchema(schema, {
    io: "input",
    unrepresentable: "any",
    override: ({ jsonSchema }) => {
      if (jsonSchema.type === "string" && !jsonSchema.enum) Object.assign(jsonSchema, { type: ["string", "number"] });
    },
  });
  explain(made as Node, [], words);
  return made;
}

/** Gives each field below a node its words, and each choice its title. */
function explain(node: Node, path: readonly string[], words: Record<string, FieldWords>): void {
  if (node.enum) {
    node.oneOf = node.enum.map((choice) => ({ const: choice, title: choiceTitles[choice] ?? choice }));
    delete node.enum;
  }
  for (const [name, field] of Object.entries(node.properties ?? {})) {
    const own = words[[...path, name].join("/")];
    if (own?.says) field.description ??= own.says;
    if (own?.like) field.examples ??= own.like;
    explain(field, [...path, name], words);
  }
  for (const inner of [...(node.items ? [node.items] : []), ...(node.anyOf ?? [])]) explain(inner, path, words);
}
