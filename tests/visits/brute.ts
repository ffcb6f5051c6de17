/** The course, told a second time: every set of days is tried and held against the words. Slow, and plain to read. */
export type Range = [number, number];
export type PhaseWords = {
  gap: Range;
  first: Range | null;
  limit: { kind: "days" | "day" | "times"; range: Range } | null;
  /** Index of the single visit before which it ends. */
  until: number | null;
};
export type SingleWords = { name: string; window: Range; maybe: boolean; after: number | null };
export type Words = { phases: PhaseWords[]; singles: SingleWords[]; closed: number[]; booked: number[] };

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
      const happens = singles.map((_, i) => {
        for (let at: number | null = i; at !== null; at = singles[at]?.after ?? null) if (!chosen[at]) return false;
        return true;
      });
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

function schedulesOf(words: Words, happens: boolean[], lengths: number[]): Schedule[] {
  const open = (day: number) => !words.closed.includes(day);
  const days = product<number | null>(
    words.singles.map(({ window, after }, i) =>
      happens[i] ? (after === null ? up(...window) : up(1, horizon)).filter(open) : [null],
    ),
  ).filter((chosen) =>
    words.singles.every(({ window, after }, i) => {
      const day = chosen[i] ?? null;
      const base = after === null ? 0 : (chosen[after] ?? 0);
      return day === null || (base + window[0] <= day && day <= base + window[1]);
    }),
  );
  const runs = new Map<string, ReturnType<typeof runsOf>>();
  return days
    .flatMap((singles) => {
      const ends = words.phases.map(({ until }) => (until === null ? null : (singles[until] ?? null)));
      const key = ends.join();
      const found = runs.get(key) ?? runsOf(words, lengths, ends);
      runs.set(key, found);
      const off = words.singles.reduce((sum, { window, after }, i) => {
        const day = singles[i] ?? null;
        return day === null ? sum : sum + Math.abs(day - (after === null ? 0 : (singles[after] ?? 0)) - mid(window));
      }, 0);
      return found.map((run) => ({ run: run.days, singles, price: run.price, off: off + run.off }));
    })
    .filter((schedule) => words.booked.every((day) => tripDays(schedule).includes(day)));
}

/** Every list of days and phases that the words of a run allow, and what it costs. */
function runsOf(words: Words, lengths: number[], ends: (number | null)[]) {
  const found: { days: [number, number][]; price: number; off: number }[] = [];
  const usable = up(1, horizon).filter((day) => !words.closed.includes(day));
  const grow = (days: [number, number][]): void => {
    const judged = judge(words, lengths, ends, days, usable);
    if (judged === "never") return;
    if (judged !== "unfinished") found.push({ days, ...judged });
    const [last, phase] = days.at(-1) ?? [0, 0];
    for (const day of usable.filter((one) => one > last && one <= last + 8))
      for (const next of up(phase, words.phases.length - 1)) grow([...days, [day, next]]);
  };
  grow([]);
  return found;
}

type Judged = { price: number; off: number } | "unfinished" | "never";

/** Holds days against the words: allowed as a whole course, allowed so far, or wrong already. */
function judge(
  words: Words,
  lengths: number[],
  ends: (number | null)[],
  days: [number, number][],
  usable: number[],
): Judged {
  let [price, off, base] = [0, 0, 0];
  let whole = true;
  for (const [index, { gap, first, limit }] of words.phases.entries()) {
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
