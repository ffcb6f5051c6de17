import type { z } from "zod";
import { nearest } from "#problems/near.js";
import { type Place, type Places, placeOf, within } from "#problems/place.js";
import { isCode, type Outcome, type Problem, problem } from "#problems/problem.js";
import type { Fault } from "./scalars/scalar.js";
import { fieldsAt } from "./schema-fields.js";

type Issue = z.core.$ZodIssue;
type Path = (string | number)[];

/** Checks data against a schema; every issue becomes a problem at the words it is about. prefix leads to data in places. */
export function checkShape<S extends z.ZodType>(
  schema: S,
  data: unknown,
  places: Places,
  ...prefix: Path
): Outcome<z.output<S>> {
  const result = schema.safeParse(data);
  if (result.success) return { value: result.data, problems: [] };

  const placeAt = (path: Path) => placeOf(places, ...prefix, ...path);
  const keyPlace = (path: Path) => places[`${[...prefix, ...path].join("/")}/`] ?? placeAt(path);

  function told(issue: Issue): Problem[] {
    const path = issue.path as Path;
    const at = placeAt(path);
    const field = String([...prefix, ...path].findLast((step) => typeof step === "string") ?? "plan");
    const given = valueAt(data, path);
    if (issue.code === "custom") return [fault(issue.params, at)];
    if (issue.code === "unrecognized_keys") {
      const known = fieldsAt(schema, path);
      return issue.keys.map((key) =>
        problem("field-unknown", keyPlace([...path, key]), { field: key, near: nearest(key, known), known }),
      );
    }
    if (given === undefined || given === "") return [problem("field-missing", at, { field })];
    switch (issue.code) {
      case "invalid_value": {
        const choices = issue.values.map(String);
        return [problem("not-a-choice", at, { given: String(given), near: nearest(String(given), choices), choices })];
      }
      case "too_big":
        return [problem("text-too-long", at, { field, limit: Number(issue.maximum) })];
      case "invalid_union":
        return nearestShape(issue.errors).flatMap((one) => told({ ...one, path: [...path, ...one.path] }));
      default:
        return [problem("wrong-shape", at, { field, expected: "expected" in issue ? issue.expected : issue.code })];
    }
  }

  return { value: null, problems: result.error.issues.flatMap(told) };
}

/** Of the shapes a value may have, what is wrong with the one of its own kind (text, list, map), or else with the first. */
function nearestShape(tried: Issue[][]): Issue[] {
  const sameKind = (issues: Issue[]) => !issues.some(({ code, path }) => code === "invalid_type" && path.length === 0);
  return tried.find(sameKind) ?? tried[0] ?? [];
}

/** A scalar's own fault carries its problem code and values; see scalars/scalar.ts. */
function fault(params: unknown, at: Place): Problem {
  const { fault: code, values, offset = 0, length } = params as Fault;
  if (!isCode(code)) throw new Error(`a scalar named a problem that is not known: ${code}`);
  return problem(code, within(at, offset, length ?? at.length - offset), values as never);
}

function valueAt(data: unknown, path: Path): unknown {
  return path.reduce<unknown>(
    (value, step) =>
      typeof value === "object" && value !== null && Object.hasOwn(value, step)
        ? (value as Record<string, unknown>)[step]
        : undefined,
    data,
  );
}
