import type { Clock } from "../facts.js";

/** Minutes after midnight, first and last. */
export type Minutes = { from: number; to: number };

export const sinceMidnight = (clock: Clock): number => Number(clock.slice(0, 2)) * 60 + Number(clock.slice(3));

export const clockAt = (minutes: number): Clock =>
  [Math.floor(minutes / 60), minutes % 60].map((part) => String(part).padStart(2, "0")).join(":");

/** What two lists of stretches have in common. */
export const common = (some: readonly Minutes[], others: readonly Minutes[]): Minutes[] =>
  some.flatMap((one) =>
    others.flatMap((other) => {
      const [from, to] = [Math.max(one.from, other.from), Math.min(one.to, other.to)];
      return from <= to ? [{ from, to }] : [];
    }),
  );
