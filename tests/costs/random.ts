import fc from "fast-check";
import type { Counts } from "#compute/facts.js";

/** What comes off, or is added: "12.5000" percent, or an amount as a text. */
export type Part = { percent: string } | { amount: string };
type Ends = { low: string; high: string };
/** A random estimate as a clinic would write it: amounts as texts, counts from a random course. */
export type Row = Ends & {
  per: "once" | "visit";
  kind: number;
  taxes: number[];
  times: number;
  maybe: "" | " if needed" | " if done";
  /** The price for animals up to so many kilograms; the patient has 10. */
  band: (Ends & { upTo: 9 | 10 | 20 }) | null;
  /** What a weekend adds, by the visit. */
  weekend: Part | null;
  off: Part | null;
};
export type Case = {
  currency: "JPY" | "USD" | "KWD";
  digits: number;
  rows: Row[];
  taxes: { rate: string; inclusive: "yes" | "no" }[];
  /** Visits of kind k are on days 1 + k, 4 + k, 7 + k, ... after discharge; the fewest are sure. */
  kinds: Counts[];
  /** What comes off the whole. */
  off: Part | null;
  /** A package that holds so many of a row. */
  pack: { price: string; row: number; holds: number } | null;
  paid: string;
};

const written = (minor: number, digits: number) => {
  const text = String(minor).padStart(digits + 1, "0");
  return digits === 0 ? text : `${text.slice(0, -digits)}.${text.slice(-digits)}`;
};

const counts = fc
  .tuple(fc.nat(5), fc.nat(5), fc.nat(5))
  .map((three) => three.toSorted((a, b) => a - b))
  .map(([fewest = 0, likely = 0, most = 0]) => ({ fewest, likely, most }));

const rate = fc.oneof(
  fc.constantFrom("0", "5", "12.5", "50", "100"),
  fc.tuple(fc.nat(99), fc.nat(9999)).map(([whole, part]) => `${whole}.${String(part).padStart(4, "0")}`),
);

/** Some rows round to halves: prices near nothing, and rates such as 50 %. */
const minor = fc.oneof(fc.nat(20), fc.nat(50_000), fc.nat(2_000_000));

/** Most things have none of it. */
const seldom = <T>(one: fc.Arbitrary<T>) => fc.option(one, { freq: 1 });

const caseIn = (currency: Case["currency"]): fc.Arbitrary<Case> => {
  const digits = { JPY: 0, USD: 2, KWD: 3 }[currency];
  const money = minor.map((amount) => written(amount, digits));
  const part: fc.Arbitrary<Part> = fc.oneof(fc.record({ percent: rate }), fc.record({ amount: money }));
  const ends = fc.tuple(minor, minor).map((two) => ({
    low: written(Math.min(...two), digits),
    high: written(Math.max(...two), digits),
  }));
  const row = fc
    .record({
      price: ends,
      per: fc.constantFrom("once" as const, "visit" as const),
      kind: fc.nat(2),
      taxes: fc.uniqueArray(fc.nat(2), { maxLength: 2 }),
      times: fc.oneof(fc.constant(1), fc.integer({ min: 1, max: 99 })),
      maybe: fc.constantFrom("" as const, "" as const, " if needed" as const, " if done" as const),
      band: seldom(fc.tuple(ends, fc.constantFrom(9 as const, 10 as const, 20 as const))),
      weekend: seldom(part),
      off: seldom(part),
    })
    .map(
      ({ price, band, weekend, ...one }): Row => ({
        ...one,
        ...price,
        band: band && { ...band[0], upTo: band[1] },
        weekend: one.per === "visit" ? weekend : null,
      }),
    );
  return fc.record({
    currency: fc.constant(currency),
    digits: fc.constant(digits),
    taxes: fc.array(fc.record({ rate, inclusive: fc.constantFrom("yes" as const, "no" as const) }), {
      minLength: 3,
      maxLength: 3,
    }),
    kinds: fc.array(counts, { minLength: 3, maxLength: 3 }),
    paid: money,
    off: seldom(part),
    pack: seldom(fc.record({ price: money, row: fc.nat(7), holds: fc.integer({ min: 1, max: 9 }) })),
    rows: fc.array(row, { maxLength: 8 }),
  });
};

export const anyCase: fc.Arbitrary<Case> = fc
  .constantFrom("JPY" as const, "USD" as const, "KWD" as const)
  .chain(caseIn);
