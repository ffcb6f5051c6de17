/** The course, told a second time: every set of days is tried and held against the words. Slow, and plain to read. */
export type Range = [number, number];
/** The half of the day in which a visit must begin; the clinic is open in both. */
export type Half = "morning" | "afternoon" | null;
export type PhaseWords = {
  gap: Range;
  first: Range | null;
  /** Index of the single visit that first counts from. */
  firstAfter: number | null;
  limit: { kind: "days" | "day" | "times"; range: Range } | null;
  /** Index of the single visit before which it says it ends. */
  until: number | null;
  half: Half;
};
/** after: index of the single visit it counts from, or "last change". */
export type SingleWords = {
  name: string;
  window: Range;
  maybe: boolean;
  after: number | "last change" | null;
  half: Half;
};
/** taken: days on whose mornings or afternoons the owner cannot come. */
export type Words = {
  phases: PhaseWords[];
  singles: SingleWords[];
  closed: number[];
  taken: Record<"morning" | "afternoon", number[]>;
  booked: number[];
};

/** One schedule: the days of the run with the phase of each, the day of each single visit (null: does not happen). */
export type Schedule = { run: [day: number, phase: number][]; singles: (number | null)[]; price: number; off: number };
export type Way = { happens: boolean[]; lengths: number[]; schedules: Schedule[] };

const up = (from: number, to: number) => Array.from({ length: Math.max(0, to - from + 1) }, (_, i) => from + i);
const product = <T>(lists: T[][]): T[][] =>
  lists.reduce<T[][]>((all, list) => all.flatMap((head) => list.map((item) => [...head, item])), [[]]);
const mid = ([from, to]: Range) => Math.floor((from + to + 1) / 2);

/** No course made by the test reaches farther. */
export const horizon = 40;

/** Every way the wound and the decisions may go, each with its cheapest schedules. */
export function everyWay(words: Words): Way[] {
  const { phases, singles } = words;
  const decisions = product(singles.map(({ maybe }) => (maybe ? [false, true] : [true])));
  const lengths = product(phases.map(({ limit }) => (limit ? up(...limit.range) : [0])));
  return decisions.flatMap((chosen) =>
    lengths.map((length) => {
      const can = (at: number | null): boolean => at === null || (chosen[at] === true && can(baseOf(words, at)));
      const happens = singles.map((_, i) => can(i));
      return { happens, lengths: length, schedules: cheapest(schedulesOf(words, happens, length)) };
    }),
  );
}

function cheapest(schedules: Schedule[]): Schedule[] {
  const least = Math.min(...schedules.map(({ price }) => price));
  return schedules.filter(({ price }) => price === least);
}

export const tripDays = ({ run, singles }: Schedule): number[] => [
  ...new Set([...run.map(([day]) => day), ...singles.filter((day) => day !== null)]),
];

/** The single visit that happens, or does not, before another can. */
function baseOf({ phases, singles }: Words, index: number): number | null {
  const after = singles[index]?.after ?? null;
  return after === "last change" ? (phases[0]?.firstAfter ?? null) : after;
}

/** A visit in one half of a day can be there if the clinic is open and the owner free; a booked day is used anyway. */
function canBe({ closed, taken, booked }: Words, half: Half, day: number): boolean {
  const free = (one: "morning" | "afternoon") => !taken[one].includes(day);
  const fits = half === null ? free("morning") || free("afternoon") : free(half);
  return booked.includes(day) || (!closed.includes(day) && fits);
}

/** All that is done on a day is done on one trip: in a half of the day that suits all of it. */
function oneTripADay(words: Words, { run, singles }: Schedule): boolean {
  const halves = [
    ...run.map(([day, phase]) => ({ day, half: words.phases[phase]?.half ?? null })),
    ...singles.map((day, i) => ({ day, half: words.singles[i]?.half ?? null })),
  ];
  return halves.every(
    ({ day }) =>
      day === null ||
      words.booked.includes(day) ||
      (["morning", "afternoon"] as const).some((half) =>
        halves.every((other) => other.day !== day || ((other.half ?? half) === half && canBe(words, half, day))),
      ),
  );
}

/** The single visits before which a phase ends: the one it names, and the closure of the wound unless it begins later. */
function endsOf({ singles, phases }: Words, { until }: PhaseWords): number[] {
  const { first = null, firstAfter = null } = phases[0] ?? {};
  const closure = singles.findIndex(({ name }) => name === "closure");
  const later =
    first &&
    (firstAfter === closure ||
      daysByWords(singles).every((days) => (days[firstAfter ?? -1] ?? 0) + first[0] > (days[closure] ?? 0)));
  return [...(until === null ? [] : [until]), ...(closure < 0 || later ? [] : [closure])];
}

/** Every set of days the words of the single visits name, whatever the calendar says. */
function daysByWords(singles: readonly SingleWords[]): number[][] {
  return product(singles.map(({ window }) => up(...window))).map((chosen) => {
    const days: number[] = [];
    for (const [i, { after }] of singles.entries())
      days.push((chosen[i] ?? 0) + (typeof after === "number" ? (days[after] ?? 0) : 0));
    return days;
  });
}

function schedulesOf(words: Words, happens: boolean[], lengths: number[]): Schedule[] {
  const days = product<number | null>(
    words.singles.map(({ window, after, half }, i) =>
      happens[i] ? (after === null ? up(...window) : up(1, horizon)).filter((day) => canBe(words, half, day)) : [null],
    ),
  ).filter((chosen) =>
    words.singles.every(({ window, after }, i) => {
      const day = chosen[i] ?? null;
      if (after === "last change") return true;
      const base = after === null ? 0 : (chosen[after] ?? 0);
      return day === null || (base + window[0] <= day && day <= base + window[1]);
    }),
  );
  const runs = new Map<string, ReturnType<typeof runsOf>>();
  return days
    .flatMap((singles) => {
      const ends = words.phases.map((phase) =>
        Math.min(...endsOf(words, phase).map((index) => singles[index] ?? Number.POSITIVE_INFINITY)),
      );
      const [start] = words.phases;
      const begins = start?.firstAfter == null ? 0 : (singles[start.firstAfter] ?? null);
      const key = [...ends, begins].join();
      const found =
        runs.get(key) ?? (begins === null ? [{ days: [], price: 0, off: 0 }] : runsOf(words, lengths, ends, begins));
      runs.set(key, found);
      return found.flatMap((run): Schedule[] => {
        const last = run.days.at(-1)?.[0];
        let off = run.off;
        for (const [i, { window, after }] of words.singles.entries()) {
          const day = singles[i] ?? null;
          if (day === null) continue;
          const base = after === null ? 0 : after === "last change" ? last : (singles[after] ?? 0);
          if (base === undefined || day < base + window[0] || day > base + window[1]) return [];
          off += Math.abs(day - base - mid(window));
        }
        return [{ run: run.days, singles, price: run.price, off }];
      });
    })
    .filter((schedule) => oneTripADay(words, schedule))
    .filter((schedule) => words.booked.every((day) => tripDays(schedule).includes(day)));
}

/** Every list of days and phases that the words of a run allow, and what it costs. */
function runsOf(words: Words, lengths: number[], ends: number[], begins: number) {
  const found: { days: [number, number][]; price: number; off: number }[] = [];
  const usable = words.phases.map(({ half }) => up(1, horizon).filter((day) => canBe(words, half, day)));
  const grow = (days: [number, number][]): void => {
    const judged = judge(words, lengths, ends, begins, days, usable);
    if (judged === "never") return;
    if (judged !== "unfinished") found.push({ days, ...judged });
    const [last, phase] = days.at(-1) ?? [0, 0];
    // No window reaches further; where all its days are closed, the next usable one may be later still.
    const due = (last === 0 ? begins : last) + 8;
    for (const next of up(phase, words.phases.length - 1)) {
      const mine = usable[next] ?? [];
      const reach = mine.find((one) => one >= due) ?? due;
      for (const day of mine.filter((one) => one > last && one <= reach)) grow([...days, [day, next]]);
    }
  };
  grow([]);
  return found;
}

type Judged = { price: number; off: number } | "unfinished" | "never";

/** Holds days against the words: allowed as a whole course, allowed so far, or wrong already. */
function judge(
  words: Words,
  lengths: number[],
  ends: number[],
  begins: number,
  days: [number, number][],
  usableBy: number[][],
): Judged {
  let [price, off, base] = [0, 0, begins];
  let whole = true;
  for (const [index, { gap, first: said, limit }] of words.phases.entries()) {
    const usable = usableBy[index] ?? [];
    const first: Range | null = said && [begins + said[0], begins + said[1]];
    const mine = days.filter(([, phase]) => phase === index).map(([day]) => day);
    /** A visit that ends a phase is not foreseen: the next phase begins on its day at the soonest. */
    const [later] = days.find(([, phase]) => phase > index) ?? [Number.POSITIVE_INFINITY];
    const event = ends[index] ?? Number.POSITIVE_INFINITY;
    const length = lengths[index] ?? 0;
    const starts = first ? (mine[0] ?? Number.POSITIVE_INFINITY) : base + 1;
    const end = Math.min(
      limit?.kind === "day" ? length : limit?.kind === "days" ? starts + length - 1 : Number.POSITIVE_INFINITY,
      event <= later ? event - 1 : Number.POSITIVE_INFINITY,
    );
    let due: Range = first ?? [base + gap[0], base + gap[1]];
    for (const day of mine) {
      const openDays = usable.filter((one) => due[0] <= one && one <= due[1]);
      const next = usable.find((one) => one >= due[0]);
      const late = openDays.length === 0 && day === next && due[1] <= end;
      if (day > end || !((due[0] <= day && day <= due[1]) || late)) return "never";
      if (late) price++;
      off += Math.abs(day - (first && day === mine[0] ? mid(first) : base + mid(gap)));
      base = day;
      due = [base + gap[0], base + gap[1]];
    }
    if (limit?.kind === "times" && mine.length > length) return "never";
    if ((limit?.kind === "times" && mine.length === length) || due[1] > end) continue;
    const next = usable.find((one) => one >= due[0]) ?? Number.POSITIVE_INFINITY;
    if (next > due[1] && next > end) {
      price++;
      continue;
    }
    if (later < Number.POSITIVE_INFINITY) return "never";
    whole = false;
  }
  return whole ? { price, off } : "unfinished";
}
