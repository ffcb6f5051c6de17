import fc from "fast-check";
import { expect, test } from "vitest";
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
import { kinds, planOf, run } from "./help.js";

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

/** The long run takes minutes. */
const timeout = Math.max(60_000, runs * 200);

/** What trying every set of days finds, and what the engine does. */
function compare(given: Words) {
  const ways = everyWay(given).filter(({ schedules }) => schedules.length > 0);
  const { model, ways: ours, agenda } = solved(given);

  // The same scenarios can be kept, and the best schedule of each is the best there is.
  const best = ways.map(({ schedules }) =>
    least(schedules.map((one) => cost({ ...one, trips: tripDays(one).length }))),
  );
  const found = ours.map((way) =>
    cost({
      price: way.best.reduce((sum, { stretches }) => sum + stretches.length, 0),
      trips: way.best.filter(({ done }) => done.length > 0).length,
      off: way.best.reduce((sum, step) => sum + step.off, 0),
    }),
  );
  expect(found.map(String).sort()).toEqual(best.map(String).sort());
  if (ways.length === 0) return;

  // Totals and ends.
  const all = ways.flatMap(({ schedules }) => schedules);
  const ends = (weigh: (one: Schedule) => number) => [Math.min(...all.map(weigh)), Math.max(...all.map(weigh))];
  const { trips, purposes } = countsOf(model, ours);
  expect([trips.fewest, trips.most]).toEqual(ends((one) => tripDays(one).length));
  for (const { kind, counts } of purposes) {
    const index = model.onces.findIndex((once) => once.kind.value.id === kind);
    const times = (one: Schedule) => (index < 0 ? one.run.length : Number(one.singles[index] !== null));
    expect([counts.fewest, counts.most]).toEqual(ends(times));
  }
  const lasts = all.map((one) => Math.max(...tripDays(one))).filter((day) => day > 0);
  expect(endOf(ours, agenda)).toEqual(
    lasts.length > 0 ? { earliest: dayAfter(Math.min(...lasts)), latest: dayAfter(Math.max(...lasts)) } : null,
  );

  // The days each visit may fall on, and whether it comes whatever happens.
  for (const row of rowsOf(model, ours, cutAt(model.onces.length, []))) {
    const dayIn = ({ run: visits, singles }: Schedule) =>
      (row.item < singles.length ? singles[row.item] : visits[row.number - 1]?.[0]) ?? null;
    const days = new Set(all.map(dayIn).filter((day) => day !== null));
    expect([...row.days].sort()).toEqual([...days].sort());
    expect(row.always).toBe(all.every((one) => dayIn(one) !== null));
    expect(row.days).toContain(row.ideal);
  }
}

test(
  "schedules, totals, ends and days are those that trying every set of days finds",
  () => fc.assert(fc.property(words, compare), { numRuns: runs }),
  timeout,
);

test(
  "every appointment the course can keep is in its visits, and visits of a kind are numbered in the order of their days",
  () => {
    fc.assert(
      fc.property(words, (given) => {
        const booked = given.booked.map((day) => `${dayAfter(day)}T10:00`);
        const { value, problems } = run({
          course: courseOf(given),
          booked,
          clinic: { closed: given.closed.map(dayAfter) },
        });
        if (!value) {
          expect(problems.map(({ severity }) => severity)).toContain("stop");
          return;
        }
        expect(value.visits.flatMap(({ at }) => at ?? []).sort()).toEqual(booked.sort());
        const changes = value.visits.filter(({ purposes }) => purposes.some(({ kind }) => kind === "bandage-change"));
        for (const [i, { earliest, ideal, latest }] of changes.entries()) {
          expect(earliest <= ideal && ideal <= latest).toBe(true);
          const next = changes[i + 1];
          if (next) expect(earliest < next.earliest).toBe(true);
        }
        expect(new Set(value.visits.map(({ id }) => id)).size).toBe(value.visits.length);
      }),
      { numRuns: runs },
    );
  },
  timeout,
);
