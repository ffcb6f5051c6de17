import type { Choices, Facts, Plan, Problem } from "#index.js";
import { problem } from "#problems/problem.js";

/** What follows from the answers so far. */
export type Followed = { plan: Plan; facts: Facts };
const at = { file: "", line: 1, column: 1, length: 1 };
const text = ({ value, unit }: { value: string; unit: string }) => `${value} ${unit}`;
const dayOf = (time: string) => ({ day: time.slice(0, 10) });

/** As many visits as a small screen holds; the sum of them all stands below. */
const mostVisits = 8;

export const careShown = ({ signs, steps }: Facts): Problem[] => [
  problem("new-care", at, { now: signs.filter(({ urgency }) => urgency === "now").length, steps: steps.length }),
];

/** That care of this kind wants a collar, and what it often waits for. */
export const collarWanted = (topic: Choices["topics"][number] | undefined): Problem[] =>
  topic?.collar === "needed"
    ? [problem("new-collar-wanted", at, { until: topic.oftenUntil ?? "", context: topic.oftenUntil ? "until" : "" })]
    : [];

/** Each visit with its day or its window, and how many there may be. */
export function visitsShown({ course }: Facts): Problem[] {
  const { visits, trips, ends } = course;
  if (!ends) return [];
  const each = visits.slice(0, mostVisits).map(({ purposes, earliest, latest, certainty }) => {
    const onDay = earliest === latest;
    const context = certainty === "possible" ? (onDay ? "possible-day" : "possible") : onDay ? "day" : "window";
    return problem("new-visit", at, {
      visit: purposes.map(({ kind }) => kind.replaceAll("-", " ")).join(", "),
      from: { day: earliest },
      to: { day: latest },
      context,
    });
  });
  const counted = trips.fewest === trips.most;
  const ending = ends.earliest === ends.latest;
  const context = counted ? (ending ? "fixed" : "counted") : ending ? "ending" : "";
  const sum = { ...trips, from: { day: ends.earliest }, to: { day: ends.latest }, context };
  return [...each, problem("new-visits", at, sum)];
}

/** What each medicine comes to, what is said of food though the plan does not, and which are left for the clinician. */
export const medicinesShown = ({ plan, facts: { medicines } }: Followed, left: readonly string[]): Problem[] => [
  ...medicines.map(({ name, give, everyHours, doses, first, last, dispense, asNeededMost }) =>
    problem("new-medicine", at, {
      medicine: name,
      give: text(give),
      hours: everyHours,
      doses: doses.length,
      first: dayOf(first ?? ""),
      at: first?.slice(11) ?? "",
      last: dayOf(last ?? ""),
      dispense: text(dispense),
      context: asNeededMost === null ? "by-the-clock" : "as-needed",
    }),
  ),
  ...medicines.flatMap(({ name, active }) =>
    active?.percentOff && Number(active.percentOff) !== 0
      ? [problem("new-rounded", at, { medicine: name, percent: active.percentOff })]
      : [],
  ),
  ...medicines.flatMap(({ name, food }) => {
    const isSaid = plan.medicines.some((planned) => planned.name === name && planned.food !== undefined);
    return isSaid || food === null || food === "either"
      ? []
      : [problem("new-food", at, { medicine: name, context: food })];
  }),
  ...left.map((medicine) => problem("new-medicine-left", at, { medicine })),
];

export const collarShown = ({ collar }: Facts): Problem[] =>
  collar?.size && collar.depth
    ? [
        problem("new-collar", at, {
          size: collar.size,
          depth: text(collar.depth),
          past: collar.pastNose ? text(collar.pastNose) : "",
          context: collar.pastNose ? "cone" : "ring",
        }),
      ]
    : [];

export function costShown({ estimate }: Facts): Problem[] {
  if (!estimate) return [];
  const { currency, total } = estimate;
  const money = (minor: number) => ({ minor, currency });
  return [problem("new-cost", at, { low: money(total.low), likely: money(total.likely), high: money(total.high) })];
}
