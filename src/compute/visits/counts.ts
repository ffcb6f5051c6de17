import type { Counts, Course } from "../facts.js";
import type { Agenda } from "./agenda.js";
import type { CourseModel } from "./course.js";
import type { Node, Step } from "./schedule/graph.js";
import { endsOf, type LastTrip, type Range, rangesOf, widest } from "./schedule/totals.js";
import type { Solved } from "./solve.js";

/**
 * How many trips and how many of each kind, over every schedule of every scenario: fewest and most are the ends of all
 * there are, likely is the best schedule of the likeliest scenario. Widening a range adds schedules and takes none away,
 * so it never narrows a total, as long as the narrower course fits the clinic's days without a stretched gap.
 */
export function countsOf({ onces, runs }: CourseModel, solved: readonly Solved[]): Pick<Course, "trips" | "purposes"> {
  const kindOf = [...onces.map(({ kind }) => kind.value.id), ...runs.map(({ kind }) => kind.id)];
  const kinds = [...new Set(kindOf)];
  const noTrip: number[] = [];
  const weigh = ({ done }: Step): number[] =>
    done.length === 0 ? noTrip : [1, ...kinds.map((kind) => done.filter(({ item }) => kindOf[item] === kind).length)];
  const known = new Map<Node, Range[]>();
  const ranges = solved.map(({ graph }) => rangesOf(graph, kinds.length + 1, weigh, known));
  const likely = solved[0]?.best.map(weigh) ?? [];
  const countOf = (sum: number): Counts => {
    const { least, most } = widest(ranges.flatMap((range) => range[sum] ?? []));
    return { fewest: least, likely: likely.reduce((all, weights) => all + (weights[sum] ?? 0), 0), most };
  };
  return { trips: countOf(0), purposes: kinds.map((kind, i) => ({ kind, counts: countOf(i + 1) })) };
}

/** The last day of the shortest and of the longest course. */
export function endOf(solved: readonly Solved[], agenda: Agenda): Course["ends"] {
  const known = new Map<Node, LastTrip>();
  const ends = solved.map(({ graph }) => endsOf(graph, known)).filter((range): range is Range => range !== null);
  if (ends.length === 0) return null;
  const { least, most } = widest(ends);
  return { earliest: agenda.dayOf(least), latest: agenda.dayOf(most) };
}
