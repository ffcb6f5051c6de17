import fc from "fast-check";
import { expect, test } from "vitest";
import { agendaOf } from "../../src/compute/visits/agenda.js";
import { countsOf, endOf } from "../../src/compute/visits/counts.js";
import { firstTripOf } from "../../src/compute/visits/first-trip.js";
import { link } from "../../src/compute/visits/link.js";
import { readLines } from "../../src/compute/visits/read-lines.js";
import { rowsOf } from "../../src/compute/visits/rows.js";
import { scenariosOf } from "../../src/compute/visits/scenario.js";
import { cutAt } from "../../src/compute/visits/schedule/slots.js";
import { solve } from "../../src/compute/visits/solve.js";
import {
  everyWay,
  type Half,
  type PhaseWords,
  type Range,
  type Schedule,
  type SingleWords,
  tripDays,
  type Words,
} from "./brute.js";
import { type Case, everyDay, type Hours, kinds, planOf, run } from "./help.js";

/** VISIT_CASES=10000 for the long run. */
const runs = Number(process.env["VISIT_CASES"] ?? 1000);

const range = (least: number, most: number, wide: number): fc.Arbitrary<Range> =>
  fc
    .tuple(fc.integer({ min: least, max: most }), fc.integer({ min: 0, max: wide }))
    .map(([from, more]) => [from, from + more]);

const half = fc.constantFrom<Half[]>(null, null, null, "morning", "afternoon");
const days = (most: number, count: number) => fc.uniqueArray(fc.integer({ min: 1, max: most }), { maxLength: count });

const single = (name: string): fc.Arbitrary<SingleWords> =>
  fc.record({ name: fc.constant(name), window: range(1, 7, 3), maybe: fc.boolean(), after: fc.constant(null), half });

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
        firstAfter: fc.constantFrom(null, null, 0),
        limit,
        until: fc.constantFrom(null, null, 0),
        half,
      }),
      { maxLength: 2 },
    ),
    drain: fc.option(single("drain out")),
    closure: fc.option(single("closure")),
    sutures: fc.option(range(2, 5, 2)),
    recheck: fc.option(fc.record({ window: range(1, 4, 2), half })),
    closed: days(14, 5),
    taken: fc.record({ morning: days(14, 2), afternoon: days(14, 2) }),
    booked: days(9, 2),
  })
  .map(({ phases, drain, closure, sutures, recheck, closed, taken, booked }): Words => {
    const singles = [drain, closure].filter((one) => one !== null);
    const anchor = singles.findIndex(({ name }) => name === "closure");
    const certain = { maybe: false, half: null };
    if (sutures && anchor >= 0) singles.push({ ...certain, name: "sutures out", window: sutures, after: anchor });
    // Two single visits and one that waits for them are enough for trying every set of days.
    const room = singles.length < 2 && phases.length > 0;
    if (recheck && room) singles.push({ ...certain, ...recheck, name: "recheck", after: "last change" });
    const named = singles.length > 0 && singles[0]?.name !== "recheck";
    return {
      phases: phases.map((phase, i) => {
        const first = i === 0 ? phase.first : null;
        const firstAfter = first && named ? phase.firstAfter : null;
        return { ...phase, first, firstAfter, until: named && firstAfter === null ? phase.until : null };
      }),
      singles,
      taken,
      closed,
      booked: booked.filter((day) => !closed.includes(day)),
    };
  });

const span = ([from, to]: Range) => (from === to ? `${from}` : `${from}-${to}`);

const slot = { morning: " not after 10:00", afternoon: " not before 14:00" };

function lineOf({ gap, first, firstAfter, limit: end, until, half }: PhaseWords, singles: SingleWords[]): string {
  const last = {
    days: `for ${span(end?.range ?? [0, 0])} days`,
    day: `until day ${span(end?.range ?? [0, 0])}`,
    times: `${span(end?.range ?? [0, 0])} times`,
  };
  return [
    `change every ${span(gap)} days`,
    ...(end ? [last[end.kind]] : []),
    ...(until === null ? [] : [`or ${singles[until]?.name}`]),
    ...(first && firstAfter === null ? [`, first day ${span(first)}`] : []),
    ...(first && firstAfter !== null ? [`, first ${span(first)} days after ${singles[firstAfter]?.name}`] : []),
    ...(half ? [slot[half]] : []),
  ].join(" ");
}

const courseOf = ({ phases, singles }: Words): string[] => [
  ...singles.map(({ name, window, maybe, after, half }) => {
    const base = after === "last change" ? "the last change" : singles[after ?? 0]?.name;
    const when = after === null ? `day ${span(window)}` : `${span(window)} days after ${base}`;
    return `${maybe ? "maybe " : ""}${name} ${when}${half ? slot[half] : ""}`;
  }),
  ...phases.map((phase) => lineOf(phase, singles)),
];

/** The clinic sees the last patient of a morning at 11:30, of an afternoon at 17:30. */
const hours = [
  { open: "08:00", close: "12:00" },
  { open: "13:00", close: "18:00" },
];
const halves: Hours = Object.fromEntries(Object.keys(everyDay).map((day) => [day, hours])) as Hours;
const takenIn = ({ taken }: Words) => [
  ...taken.morning.map((day) => `${dayAfter(day)} 06:00-12:30`),
  ...taken.afternoon.map((day) => `${dayAfter(day)} 12:30-20:00`),
];
const caseOf = (given: Words): Case => ({
  course: courseOf(given),
  hours: halves,
  unavailable: takenIn(given),
  clinic: { closed: given.closed.map(dayAfter) },
});

const dayAfter = (day: number) => new Date(Date.UTC(2026, 2, 2 + day)).toISOString().slice(0, 10);

function solved(given: Words) {
  const plan = planOf(caseOf(given));
  const { lines, problems } = readLines(plan, kinds);
  expect(problems).toEqual([]);
  const model = link(lines).value;
  const scenarios = model && scenariosOf(model);
  const agenda = agendaOf(plan, kinds);
  const ways = scenarios && solve(model, scenarios, agenda, { booked: given.booked, fixed: new Map(), slack: 0 });
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

  // The first trip, and what it may be for.
  const firsts = all.map((one) => Math.min(...tripDays(one)));
  const onFirst = all.flatMap((one, i) => [
    ...(one.run.some(([day]) => day === firsts[i]) ? ["bandage-change"] : []),
    ...one.singles.flatMap((day, index) => (day === firsts[i] ? [model.onces[index]?.kind.value.id ?? ""] : [])),
  ]);
  const first = firstTripOf(model, ours, agenda);
  expect(first && { ...first, kinds: first.kinds.map(({ kind }) => kind).sort() }).toEqual(
    firsts.includes(Number.POSITIVE_INFINITY)
      ? null
      : {
          earliest: dayAfter(Math.min(...firsts)),
          latest: dayAfter(Math.max(...firsts)),
          kinds: [...new Set(onFirst)].sort(),
        },
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
        const { value, problems } = run({ ...caseOf(given), booked });
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
