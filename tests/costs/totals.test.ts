import { addDays, formatISO } from "date-fns";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Estimate, Span } from "#compute/facts.js";
import { estimate, price, span, visit } from "./help.js";
import { byAnotherLibrary } from "./oracle.js";
import { anyCase, type Case } from "./random.js";

/** HEARTHSHEET_RUNS=10000 npx vitest run tests/costs, for the long run. */
const runs = { numRuns: Number(process.env["HEARTHSHEET_RUNS"] ?? 300) };
const ends = ["low", "likely", "high"] as const;
const dayAfter = (days: number) => formatISO(addDays(new Date(2026, 2, 2), days), { representation: "date" });

/** Each row has its number in its name, so that rows keep their names in another order. */
const named = (given: Case) => given.rows.map((row, index) => ({ row, name: `item ${index}` }));

const computed = (given: Case, rows = named(given)): Estimate => {
  const { currency, taxes, kinds, paid, off, pack } = given;
  const packed = pack && named(given)[pack.row];
  const holding = pack && packed && packed.row.maybe === "" ? { ...pack, name: packed.name } : null;
  return estimate({
    currency,
    paid,
    items: [...rows.map(({ row, name }) => `${name} x ${row.times}${row.maybe}`), ...(holding ? ["package"] : [])],
    discounts: [
      ...(off ? [{ off }] : []),
      ...rows.flatMap(({ row, name }) => (row.off ? [{ off: row.off, on: name }] : [])),
    ],
    taxes: taxes.map((tax, index) => ({ name: `tax ${index}`, ...tax })),
    prices: [
      ...rows.map(({ row, name }) => ({
        item: name,
        price: price(row.low, row.high),
        "by weight": row.band
          ? [
              {
                "up to": { value: String(row.band.upTo), unit: "kg" as const },
                price: price(row.band.low, row.band.high),
              },
            ]
          : [],
        "by time": row.weekend ? [{ when: "weekend" as const, more: row.weekend }] : [],
        per: row.per,
        ...(row.per === "visit" && { visit: `kind-${row.kind}` }),
        tax: row.taxes.map((tax) => `tax ${tax}`),
      })),
      ...(holding
        ? [{ item: "package", price: price(holding.price), includes: [`${holding.name} x ${holding.holds}`] }]
        : []),
    ],
    course: {
      purposes: kinds.map((counts, index) => ({ kind: `kind-${index}`, counts })),
      visits: kinds.flatMap(({ fewest, most }, kind) =>
        Array.from({ length: most }, (_, i) =>
          visit(`${kind}-${i}`, `kind-${kind}`, dayAfter(1 + kind + 3 * i), null, i < fewest ? "expected" : "possible"),
        ),
      ),
    },
  });
};

const inOrder = ({ low, likely, high }: Span) => low <= likely && likely <= high;
const added = (spans: Span[], end: (typeof ends)[number]) => spans.reduce((all, span) => all + span[end], 0);

describe("any estimate", { timeout: 1_200_000 }, () => {
  test("agrees to the cent with another decimal library", () => {
    fc.assert(
      fc.property(anyCase, (given) => {
        const { subtotal, discounts, taxes, total, today, paid, balance } = computed(given);
        const expected = byAnotherLibrary(given);
        const off = discounts.map(({ amount }) => amount);
        const taxed = taxes.map(({ amount }) => amount);
        for (const end of ends) {
          const got = {
            subtotal: subtotal[end],
            off: added(off, end),
            taxed: added(taxed, end),
            total: total[end],
            today: today[end],
          };
          const wanted = Object.entries(expected[end]).map(([name, sum]) => [name, sum.toNumber()]);
          expect(got).toEqual(Object.fromEntries(wanted));
          const left = expected[end].total.minus(expected.paid);
          expect(balance[end]).toBe(left.lt(0) ? 0 : left.toNumber());
        }
        expect(paid).toBe(expected.paid.toNumber());
      }),
      runs,
    );
  });

  test("runs from low over likely to high in every part, and its parts are its total to the cent", () => {
    fc.assert(
      fc.property(anyCase, (given) => {
        const { lines, subtotal, discounts, taxes, total, today, visits, byDate, branches, balance } = computed(given);
        const spans = [subtotal, total, today, balance, ...lines.flatMap(({ unit, total }) => [unit, total])];
        spans.push(...visits.map(({ amount }) => amount), ...byDate.map((day) => day.total));
        spans.push(...branches.flatMap(({ without, with: taken }) => [without, taken]));
        expect(spans.filter((one) => !inOrder(one))).toEqual([]);
        for (const end of ends) {
          expect(
            added(
              lines.map((line) => line.total),
              end,
            ),
          ).toBe(subtotal[end]);
          const off = added(
            discounts.map(({ amount }) => amount),
            end,
          );
          const onTop = added(
            taxes.filter(({ inclusive }) => !inclusive).map(({ amount }) => amount),
            end,
          );
          expect(subtotal[end] - off + onTop).toBe(total[end]);
          const grown = byDate.map((day) => day.total[end]);
          expect(grown.toSorted((a, b) => a - b)).toEqual(grown);
          if (grown.length > 0) expect(grown.at(-1)).toBe(total[end]);
          for (const { without, with: taken } of branches) expect(taken[end]).toBeGreaterThanOrEqual(without[end]);
        }
        // What happens for sure costs the same in a visit's own bill as in the whole: nothing is lost between bills.
        const firm = given.rows.every(({ maybe }) => maybe === "");
        if (firm)
          expect(
            today.high +
              added(
                visits.map(({ amount }) => amount),
                "high",
              ),
          ).toBe(total.high);
      }),
      runs,
    );
  });

  test("is the same in any order", () => {
    fc.assert(
      fc.property(
        anyCase.chain((given) =>
          fc.tuple(fc.constant(given), fc.shuffledSubarray(named(given), { minLength: given.rows.length })),
        ),
        ([given, rows]) => {
          const { lines, discounts, branches, ...whole } = computed(given);
          const other = computed(given, rows);
          expect({ ...whole, from: null, lines: lines.length }).toEqual({
            ...Object.fromEntries(Object.keys(whole).map((key) => [key, other[key as keyof typeof whole]])),
            from: null,
            lines: other.lines.length,
          });
          expect(new Set(other.branches.map((one) => JSON.stringify(one)))).toEqual(
            new Set(branches.map((one) => JSON.stringify(one))),
          );
          expect(
            added(
              discounts.map(({ amount }) => amount),
              "high",
            ),
          ).toBe(
            added(
              other.discounts.map(({ amount }) => amount),
              "high",
            ),
          );
        },
      ),
      runs,
    );
  });

  test("never comes to less with one visit more", () => {
    fc.assert(
      fc.property(anyCase, fc.nat(2), fc.constantFrom("fewest", "likely", "most"), (given, index, end) => {
        const kinds = given.kinds.map((counts, at) => {
          if (at !== index) return counts;
          const fewest = counts.fewest + (end === "fewest" ? 1 : 0);
          const likely = Math.max(counts.likely + (end === "likely" ? 1 : 0), fewest);
          return { fewest, likely, most: Math.max(counts.most + (end === "most" ? 1 : 0), likely) };
        });
        const before = computed(given).total;
        const after = computed({ ...given, kinds }).total;
        for (const one of ends) expect(after[one]).toBeGreaterThanOrEqual(before[one]);
      }),
      runs,
    );
  });
});

describe("a discount and the taxes of what is left", () => {
  const tax = (rate: string) => [{ name: "tax", rate, inclusive: "no" as const }];

  // Half of 15 is 7.5, whose tax of 20 % is 1.5: 2 cents. Of the 7 cents that are left in whole cents it would be 1.
  test("a percent of the whole leaves its exact share of each line to be taxed", () => {
    const { total } = estimate({
      items: ["swab"],
      prices: [{ item: "swab", price: price("0.15"), tax: "tax" }],
      taxes: tax("20"),
      discounts: [{ off: { percent: "50" } }],
    });
    expect(total).toEqual(span(9));
  });

  // 30 and 15 cents, one cent off the item: taxed at 10 % it is 3 and 1 cents, or 3 and 2, by which of them it comes off.
  test("an amount off an item comes off the same of its lines, however they are written", () => {
    const total = (...items: string[]) =>
      estimate({
        items,
        prices: [{ item: "gauze", price: price("0.15"), tax: "tax" }],
        taxes: tax("10"),
        discounts: [{ off: { amount: "0.01 USD" }, on: "gauze" }],
      }).total.high;
    expect(total("gauze", "gauze x 2 if needed")).toBe(total("gauze x 2 if needed", "gauze"));
  });
});
