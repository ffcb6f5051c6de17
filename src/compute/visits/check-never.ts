import { type Problem, problem } from "#problems/problem.js";
import type { CourseModel } from "./course.js";
import type { Solved } from "./solve.js";

/** Asks about each line of a repeating visit that the others leave no day, whatever may happen: nothing is dropped in silence. */
export function checkNever({ onces, runs }: CourseModel, solved: readonly Solved[]): Problem[] {
  const comes = new Set(
    solved
      .flatMap(({ graph }) => graph.layers.flat())
      .flatMap(({ steps }) => steps.flatMap(({ done }) => done.map(({ item, phase }) => `${item}:${phase}`))),
  );
  return runs.flatMap(({ phases }, run) =>
    phases.flatMap(({ kind }, phase) =>
      comes.has(`${onces.length + run}:${phase}`) ? [] : [problem("repeat-never-comes", kind.at, { given: kind.text })],
    ),
  );
}
