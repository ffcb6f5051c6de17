import type { Plan } from "#plan/plan.js";
import { placeOf } from "#problems/place.js";
import type { Problem } from "#problems/problem.js";
import type { VisitKind } from "#tables/visits.js";
import type { Line } from "./language/line.js";
import { parseLine } from "./language/parse-line.js";

/** Every course line of a plan, in the order written, and every line that could not be read. */
export function readLines(plan: Plan, kinds: readonly VisitKind[]): { lines: Line[]; problems: Problem[] } {
  const discharged = plan.discharged.slice(0, 10);
  const lines: Line[] = [];
  const problems: Problem[] = [];
  for (const [care, { course }] of plan.care.entries()) {
    let going: VisitKind | null = null;
    let unread = false;
    for (const [i, text] of course.entries()) {
      const read = parseLine(text, care, placeOf(plan.places, "care", care, "course", i), { kinds, discharged, going });
      // What a "then" goes on with may stand in the line above that could not be read: one fault, told once.
      problems.push(...read.problems.filter(({ code }) => !(unread && code === "nothing-to-follow")));
      unread ||= read.value === null;
      if (!read.value) continue;
      lines.push(read.value);
      if (read.value.repeats) going = read.value.kind.value;
    }
  }
  return { lines, problems };
}
