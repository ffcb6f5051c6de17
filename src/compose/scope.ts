import { namesIn, partOf, type Shape, viewShape } from "./shape.js";

/** What a path in a template can begin from: the contexts around it, innermost last, and the names of `as |name|`. */
export type Scope = { contexts: Shape[]; named: Record<string, Shape> };

/** Where a path stops being one: the name that is not there, and the names that are. */
export type Lost = { at: number; name: string; known: string[] };

/** Follows a path. data: it began with "@". */
export function follow(path: hbs.AST.PathExpression, { contexts, named }: Scope): Shape | Lost {
  const [first, ...later] = path.parts;
  if (path.data) return first === "root" ? walk(viewShape, later, 1) : dataOf(first ?? "");
  if (path.depth >= contexts.length) return { at: 0, name: "../", known: [] };
  const isNamed =
    first !== undefined && path.depth === 0 && !/^(\.|this\b)/.test(path.original) && Object.hasOwn(named, first);
  if (isNamed) return walk(named[first], later, 1);
  const found = walk(contexts[contexts.length - 1 - path.depth], path.parts, 0);
  return isLost(found) && found.at === 0 ? { ...found, known: [...found.known, ...Object.keys(named)] } : found;
}

export const isLost = (found: Shape | Lost): found is Lost =>
  typeof found === "object" && "at" in found && typeof found.at === "number";

/** What {{#each}} tells of its own going. */
const loop: Record<string, Shape> = { index: "number", key: "string", first: "boolean", last: "boolean" };
const dataOf = (name: string): Shape | Lost =>
  (Object.hasOwn(loop, name) ? loop[name] : undefined) ?? {
    at: 0,
    name: `@${name}`,
    known: Object.keys(loop).map((known) => `@${known}`),
  };

function walk(from: Shape | undefined, names: readonly string[], offset: number): Shape | Lost {
  let shape: Shape = from ?? {};
  for (const [index, name] of names.entries()) {
    const part = partOf(shape, name);
    if (part === null) return { at: index + offset, name, known: namesIn(shape) };
    shape = part;
  }
  return shape;
}
