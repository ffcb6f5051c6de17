import type { Plan } from "#plan/plan.js";
import type { Topic } from "#tables/topic.js";
import type { VisitKind } from "#tables/visits.js";
import { named } from "../signs/named.js";
import type { Span } from "./language/line.js";
import { parseLine } from "./language/parse-line.js";

/** On which days a visit of one care of the plan usually is; null where nothing says so. */
export type UsualDays = (care: number, kind: VisitKind) => Span | null;
export type OftenCourse = Pick<Topic, "id" | "usualCourse">;

const nowhere = { file: "", line: 1, column: 1, length: 1 };

/** What the course of its topic says goes before what is usual for its kind: stitches of an ear flap stay in for longer. */
export function usualDays({ care, discharged }: Plan, topics: readonly OftenCourse[], kinds: VisitKind[]): UsualDays {
  const often = care.map(({ topic }, i) =>
    (named(topic, topics)?.usualCourse ?? []).flatMap((line) => {
      const { value } = parseLine(line, i, nowhere, { kinds, discharged: discharged.slice(0, 10), going: null });
      return value && !value.repeats && value.when?.after === null
        ? [{ kind: value.kind.value, span: value.when.span.value }]
        : [];
    }),
  );
  return (care, kind) => often[care]?.find((one) => one.kind.id === kind.id)?.span ?? kind.usual;
}
