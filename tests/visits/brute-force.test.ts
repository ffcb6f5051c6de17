import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { agendaOf } from "../../src/compute/visits/agenda.js";
import { countsOf, endOf } from "../../src/compute/visits/counts.js";
import { link } from "../../src/compute/visits/link.js";
import { readLines } from "../../src/compute/visits/read-lines.js";
import { rowsOf } from "../../src/compute/visits/rows.js";
import { scenariosOf } from "../../src/compute/visits/scenario.js";
import { cutAt } from "../../src/compute/visits/schedule/slots.js";
import { solve } from "../../src/compute/visits/solve.js";
import {
  everyWay,
  type PhaseWords,
  type Range,
  type Schedule,
  type SingleWords,
  tripDays,
  type Words,
} from "./brute.js";
import { kinds, planOf } from "./help.js";

/** VISIT_CASES=10000 for the long run. */
const runs = Number(process.env["VISIT_CASES"] ?? 1000);

const range = (least: number, most: number, wide: number): fc.Arbitrary<Range> =>
  fc
    .tuple(fc.integer({ min: least, max: most }), fc.integer({ min: 0, max: wide }))
    .map(([from, more]) => [from, from + more]);

const single = (name: string): fc.Arbitrary<SingleWords> =>
  fc.record({ name: fc.constant(name), window: range(1, 7, 3), maybe: fc.boolean(), after: fc.constant(null) });

const limit = fc.oneof(
  fc.record({ kind: fc.constant("days" as const), range: range(2, 5, 1) }),
  fc.record({ kind: fc.constant("times" as const), range: range(1, 3, 1) }),
  fc.record({ kind: fc.constant("day" as const), range: range(6, 10, 1) }),
);

const words: fc.Arbitrary<Words> = fc
  .record({
    phases: fc.array(
      fc.record({
        gap: range(1, 3, 1),
        first: fc.option(range(1, 3, 1)),
        limit,
        until: fc.constantFrom(null, null, 0),
      }),
      { maxLength: 2 },
    ),
    drain: fc.option(single("drain out")),
    closure: fc.option(single("closure")),
    sutures: fc.option(range(2, 5, 2)),
    closed: fc.uniqueArray(fc.integer({ min: 1, max: 14 }), { maxLength: 5 }),
    booked: fc.uniqueArray(fc.integer({ min: 1, max: 9 }), { maxLength: 2 }),
  })
  .map(({ phases, drain, closure, sutures, closed, booked }): Words => {
    const singles = [drain, closure].filter((one) => one !== null);
    const anchor = singles.findIndex(({ name }) => name === "closure");
    if (sutures && anchor >= 0) singles.push({ name: "sutures out", window: sutures, maybe: false, after: anchor });
    return {
      phases: phases.map((phase, i) => ({
        ...phase,
        first: i === 0 ? phase.first : null,
        until: singles.length > 0 ? phase.until : null,
      })),
      singles,
      closed,
      booked: booked.filter((day) => !closed.includes(day)),
    };
  });

const span = ([from, to]: Range) => (from === to ? `${from}` : `${from}-${to}`);

function lineOf({ gap, first, limit: end, until }: PhaseWords, singles: SingleWords[]): string {
  const last = {
    days: `for ${span(end?.range ?? [0, 0])} days`,
    day: `until day ${span(end?.range ?? [0, 0])}`,
    times: `${span(end?.range ?? [0, 0])} times`,
  };
  return [
    `change every ${span(gap)} days`,
    ...(end ? [last[end.kind]] : []),
    ...(until === null ? [] : [`or ${singles[until]?.name}`]),
    ...(first ? [`, first day ${span(first)}`] : []),
  ].join(" ");
}

const courseOf = ({ phases, singles }: Words): string[] => [
  ...singles.map(({ name, window, maybe, after }) =>
    after === null
      ? `${maybe ? "maybe " : ""}${name} day ${span(window)}`
      : `${name} ${span(window)} days after ${singles[after]?.name}`,
  ),
  ...phases.map((phase) => lineOf(phase, singles)),
];

const dayAfter = (day: number) => new Date(Date.UTC(2026, 2, 2 + day)).toISOString().slice(0, 10);

function solved(given: Words) {
  const plan = planOf({ course: courseOf(given), clinic: { closed: given.closed.map(dayAfter) } });
  const { lines, problems } = readLines(plan, kinds);
  expect(problems).toEqual([]);
  const model = link(lines).value;
  const scenarios = model && scenariosOf(model);
  const agenda = agendaOf(plan);
  const ways = scenarios && solve(model, scenarios, agenda, { booked: given.booked, fixed: new Map() });
  if (!ways) throw new Error("not solved");
  return { model, ways, agenda };
}

const cost = ({ trips, off, price }: { trips: number; off: number; price: number }) => [price, trips, off];
const least = (costs: number[][]) =>
  costs.sort((a, b) => (a[0] ?? 0) - (b[0] ?? 0) || (a[1] ?? 0) - (b[1] ?? 0) || (a[2] ?? 0) - (b[2] ?? 0))[0];

describe("against trying every set of days", () => {
  test("the same scenarios can be kept, and each best schedule is the best there is", () => {
    fc.assert(
      fc.property(words, (given) => {
        const brute = everyWay(given)
          .filter(({ schedules }) => schedules.length > 0)
          .map(({ schedules }) => least(schedules.map((one) => cost({ ...one, trips: tripDays(one).length }))));
        const ours = solved(given).ways.map(({ best }) =>
          cost({
            price: best.reduce((sum, { stretches }) => sum + stretches.length, 0),
            trips: best.filter(({ done }) => done.length > 0).length,
            off: best.reduce((sum, step) => sum + step.off, 0),
          }),
        );
        expect(ours.map(String).sort()).toEqual(brute.map(String).sort());
      }),
      { numRuns: runs },
    );
  });

  test("totals, ends and the days of every visit are exact", () => {
    fc.assert(
      fc.property(words, (given) => {
        const ways = everyWay(given).filter(({ schedules }) => schedules.length > 0);
        const { model, ways: ours, agenda } = solved(given);
        expect(ours.length).toBe(ways.length);
        if (ways.length === 0) return;
        const all = ways.flatMap(({ schedules }) => schedules);
        const range = (weigh: (one: Schedule) => number) => [Math.min(...all.map(weigh)), Math.max(...all.map(weigh))];
        const { trips, purposes } = countsOf(model, ours);
        expect([trips.fewest, trips.most]).toEqual(range((one) => tripDays(one).length));
        for (const { kind, counts } of purposes) {
          const index = model.onces.findIndex((once) => once.kind.value.id === kind);
          const weigh = (one: Schedule) => (index < 0 ? one.run.length : one.singles[index] === null ? 0 : 1);
          expect([counts.fewest, counts.most]).toEqual(range(weigh));
        }
        const lasts = all.map((one) => Math.max(...tripDays(one))).filter((day) => day > 0);
        const ends =
          lasts.length > 0 ? { earliest: dayAfter(Math.min(...lasts)), latest: dayAfter(Math.max(...lasts)) } : null;
        expect(endOf(ours, agenda)).toEqual(ends);

        for (const row of rowsOf(model, ours, cutAt(model.onces.length, []))) {
          const dayIn = ({ run, singles }: Schedule) =>
            singles[row.item] ?? (row.item < singles.length ? null : run[row.number - 1]?.[0]) ?? null;
          const days = new Set(all.map(dayIn).filter((day) => day !== null));
          expect([...row.days].sort()).toEqual([...days].sort());
          expect(row.always).toBe(all.every((one) => dayIn(one) !== null));
          expect(row.days).toContain(row.ideal);
        }
      }),
      { numRuns: runs },
    );
  });
});
