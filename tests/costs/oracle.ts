/**
 * The estimate of a random case by another decimal library (big.js), in whole minor units, written apart from the code it
 * checks: it shares no line, no type of number and no way of keeping the counts with it.
 */
import { Big } from "big.js";
import type { Case, Part, Row } from "./random.js";

const ends = ["low", "likely", "high"] as const;
type End = (typeof ends)[number];
type Entry = { day: number; row: Row | null; amount: Big };

/** Digits after the point where a division does not end: far more than an amount of minor units has before it. */
Big.DP = 60;
const nothing = new Big(0);
/** An amount as it is written, in minor units: 12.50 is 1250. */
const whole = (text: string) => new Big(text.replace(".", ""));
const halfUp = (amount: Big) => amount.round(0, Big.roundHalfUp);
const least = (a: Big, b: Big) => (a.lt(b) ? a : b);
const share = (percent: string) => new Big(percent).div(100);
const partOf = (amount: Big, part: Part) =>
  "percent" in part ? halfUp(amount.times(share(part.percent))) : whole(part.amount);

const at = { low: "fewest", likely: "likely", high: "most" } as const;
/** The day of discharge, day 0, is a Monday. */
const isWeekend = (day: number) => day % 7 === 5 || day % 7 === 6;

/** The entries of a row at an end, those that a package holds at nothing. */
function entriesOf(row: Row, given: Case, end: End): Entry[] {
  const maybe = row.maybe !== "";
  const { low, high } = row.band && row.band.upTo >= 10 ? row.band : row;
  const price = { low: whole(low), likely: halfUp(whole(low).plus(whole(high)).div(2)), high: whole(high) }[end];
  const days: number[] = [];
  const counts = given.kinds[row.kind] ?? { fewest: 0, likely: 0, most: 0 };
  // The first visit of a row's own kind, where there is any.
  const first = counts.most > 0 ? 1 + row.kind : null;
  const anyFirst = given.kinds.findIndex(({ most }) => most > 0);
  if (row.per === "once") {
    if (!maybe || end === "high") days.push(maybe && anyFirst >= 0 ? 1 + anyFirst : 0);
  } else {
    const count = maybe ? (end === "high" ? counts.most : 0) : counts[at[end]];
    for (let i = 0; i < count; i++) days.push(1 + row.kind + 3 * i);
    if (maybe && end === "high" && first === null) days.push(0);
  }
  const { pack } = given;
  let held = pack && given.rows[pack.row] === row ? pack.holds : 0;
  if (maybe) held = 0;
  return days.map((day) => {
    const free = Math.min(held, row.times);
    held -= free;
    const extra = row.weekend && isWeekend(day) && first !== null ? partOf(price, row.weekend) : nothing;
    return { day, row, amount: price.plus(extra).times(row.times - free) };
  });
}

export function byAnotherLibrary(given: Case) {
  const [low, likely, high] = ends.map((end) => {
    const entries = given.rows.flatMap((row) => entriesOf(row, given, end));
    const packed = given.pack && given.rows[given.pack.row];
    if (given.pack && packed && packed.maybe === "")
      entries.push({ day: 0, row: null, amount: whole(given.pack.price) });
    const allowance = new Map<Row | null, Big>();
    for (const row of given.rows) if (row.off && "amount" in row.off) allowance.set(row, whole(row.off.amount));
    let left = given.off && "amount" in given.off ? whole(given.off.amount) : nothing;
    const sums = { subtotal: nothing, off: nothing, taxed: nothing, total: nothing, today: nothing };
    const add = (sum: keyof typeof sums, amount: Big) => {
      sums[sum] = sums[sum].plus(amount);
    };

    for (const day of [...new Set(entries.map((entry) => entry.day))].sort((a, b) => a - b)) {
      const bill = entries
        .filter((entry) => entry.day === day)
        .map(({ row, amount }) => {
          let off = nothing;
          if (row?.off && "percent" in row.off) off = partOf(amount, row.off);
          else if (row?.off) {
            const allowed = allowance.get(row) ?? nothing;
            off = least(allowed, amount);
            allowance.set(row, allowed.minus(off));
          }
          add("subtotal", amount);
          add("off", off);
          return { row, net: amount.minus(off) };
        });
      const before = bill.reduce((all, { net }) => all.plus(net), nothing);
      let off = nothing;
      /** What is kept of each line of the bill, as a part over a whole: divided last, so that nothing is lost before. */
      let kept: [Big, Big] = [new Big(1), new Big(1)];
      if (given.off && "percent" in given.off) {
        off = partOf(before, given.off);
        kept = [new Big(1).minus(share(given.off.percent)), new Big(1)];
      } else if (given.off) {
        off = least(left, before);
        left = left.minus(off);
        kept = before.eq(0) ? [nothing, new Big(1)] : [before.minus(off), before];
      }
      let total = before.minus(off);
      for (const { row, net } of bill) {
        const borne = (row?.taxes ?? []).flatMap((tax) => given.taxes[tax] ?? []);
        const held = borne.filter(({ inclusive }) => inclusive === "yes");
        const base = held.reduce((all, tax) => all.plus(share(tax.rate)), new Big(1));
        for (const tax of borne) {
          const amount = halfUp(net.times(kept[0]).times(share(tax.rate)).div(base.times(kept[1])));
          add("taxed", amount);
          if (tax.inclusive === "no") total = total.plus(amount);
        }
      }
      add("off", off);
      add("total", total);
      if (day === 0) sums.today = total;
    }
    return sums;
  });
  if (!low || !likely || !high) throw new Error("three ends");
  return { low, likely, high, paid: whole(given.paid) };
}
