import type { z } from "zod";

type Path = readonly (string | number)[];
type Definition = {
  shape?: Record<string, unknown>;
  element?: unknown;
  options?: unknown[];
  innerType?: unknown;
  valueType?: unknown;
};

/** The names a map may have at a path of a schema; looks through lists, unions, options and defaults. */
export function fieldsAt(schema: z.ZodType, path: Path): string[] {
  let here: unknown[] = shapes(schema);
  for (const step of path) here = here.flatMap((shape) => childOf(shape, step)).flatMap(shapes);
  return [...new Set(here.flatMap((shape) => Object.keys(definition(shape).shape ?? {})))];
}

// zod publishes its schemas' definitions under _zod for tools like this one.
const definition = (schema: unknown): Definition => (schema as { _zod?: { def: Definition } })?._zod?.def ?? {};

function shapes(schema: unknown): unknown[] {
  const { options, innerType } = definition(schema);
  if (options) return options.flatMap(shapes);
  return innerType ? shapes(innerType) : [schema];
}

function childOf(schema: unknown, step: string | number): unknown[] {
  const { shape, element, valueType } = definition(schema);
  const child = typeof step === "number" ? element : (shape?.[step] ?? valueType);
  return child ? [child] : [];
}
