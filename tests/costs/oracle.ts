/**
 * The estimate of a random case in whole numbers without a decimal point, written apart from the code it checks: it shares
 * no line, no type of number and no way of keeping the counts with it.
 */
import type { Case, Part, Row } from "./random.js";

const ends = ["low", "likely", "high"] as const;
type End = (typeof ends)[number];
type Entry = { day: number; row: Row | null; amount: bigint };

const whole = (text: string) => BigInt(text.replace(".", ""));
const halfUp = (over: bigint, under: bigint) => (2n * over + under) / (2n * under);
const least = (a: bigint, b: bigint) => (a < b ? a : b);
/** "12.5" percent as millionths of the whole: 125000. */
const millionths = (percent: string) => {
  const [before = "", after = ""] = percent.split(".");
  return BigInt(before + after.padEnd(4, "0"));
};
const million = 1_000_000n;
const partOf = (amount: bigint, part: Part) =>
  "percent" in part ? halfUp(amount * millionths(part.percent), million) : whole(part.amount);

const at = { low: "fewest", likely: "likely", high: "most" } as const;
/** The day of discharge, day 0, is a Monday. */
const isWeekend = (day: number) => day % 7 === 5 || day % 7 === 6;

/** The entries of a row at an end, those that a package holds at nothing. */
function entriesOf(row: Row, given: Case, end: End): Entry[] {
  const maybe = row.maybe !== "";
  const { low, high } = row.band && row.band.upTo >= 10 ? row.band : row;
  const price = { low: whole(low), likely: halfUp(whole(low) + whole(high), 2n), high: whole(high) }[end];
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
    const extra = row.weekend && isWeekend(day) && first !== null ? partOf(price, row.weekend) : 0n;
    return { day, row, amount: (price + extra) * BigInt(row.times - free) };
  });
}

export function inWholeNumbers(given: Case) {
  const [low, likely, high] = ends.map((end) => {
    const entries = given.rows.flatMap((row) => entriesOf(row, given, end));
    const packed = given.pack && given.rows[given.pack.row];
    if (given.pack && packed && packed.maybe === "")
      entries.push({ day: 0, row: null, amount: whole(given.pack.price) });
    const allowance = new Map<Row | null, bigint>();
    for (const row of given.rows) if (row.off && "amount" in row.off) allowance.set(row, whole(row.off.amount));
    let left = given.off && "amount" in given.off ? whole(given.off.amount) : 0n;
    const sums = { subtotal: 0n, off: 0n, taxed: 0n, total: 0n, today: 0n };

    for (const day of [...new Set(entries.map((entry) => entry.day))].sort((a, b) => a - b)) {
      const bill = entries
        .filter((entry) => entry.day === day)
        .map((entry) => {
          const { row, amount } = entry;
          let off = 0n;
          if (row?.off && "percent" in row.off) off = partOf(amount, row.off);
          else if (row?.off) {
            off = least(allowance.get(row) ?? 0n, amount);
            allowance.set(row, (allowance.get(row) ?? 0n) - off);
          }
          sums.subtotal += amount;
          sums.off += off;
          return { row, net: amount - off };
        });
      const before = bill.reduce((all, { net }) => all + net, 0n);
      let off = 0n;
      let kept: [bigint, bigint] = [1n, 1n];
      if (given.off && "percent" in given.off) {
        off = partOf(before, given.off);
        kept = [million - millionths(given.off.percent), million];
      } else if (given.off) {
        off = least(left, before);
        left -= off;
        kept = before === 0n ? [0n, 1n] : [before - off, before];
      }
      let total = before - off;
      for (const { row, net } of bill) {
        const borne = (row?.taxes ?? []).flatMap((tax) => given.taxes[tax] ?? []);
        const held = borne.filter(({ inclusive }) => inclusive === "yes");
        const base = held.reduce((all, tax) => all + millionths(tax.rate), million);
        for (const tax of borne) {
          const amount = halfUp(net * kept[0] * millionths(tax.rate), kept[1] * base);
          sums.taxed += amount;
          if (tax.inclusive === "no") total += amount;
        }
      }
      sums.off += off;
      sums.total += total;
      if (day === 0) sums.today = total;
    }
    return sums;
  });
  if (!low || !likely || !high) throw new Error("three ends");
  return { low, likely, high, paid: whole(given.paid) };
}
