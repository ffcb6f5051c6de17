import { nearest } from "#problems/near.js";
import { type Place, within } from "#problems/place.js";
import { type Outcome, problem } from "#problems/problem.js";
import { keyOf } from "./key.js";
import type { Price } from "./price-list.js";

/** What one item of an estimate says: a row of the price list, how many for each, and whether it is only a maybe. */
export type Item = {
  price: Price;
  times: number;
  when: "needed" | "done" | null;
  /** How many of all its visits, days or units a package holds. */
  included: number;
  at: Place;
};

const endings = /\s+(?:[x×]\s*(?<times>[\d.,]+)|if\s+(?<when>needed|done))$/iu;
const mostTimes = 999;

/** Reads "sedation", "sedation if needed", "gauze x 2", "gauze x 2 if needed", "closure if done". */
export function readItem(text: string, prices: ReadonlyMap<string, Price>, at: Place): Outcome<Item> {
  let name = text;
  let times: string | undefined;
  let when: Item["when"] = null;
  // A row whose own name ends like that is meant as it stands.
  for (let found = endings.exec(name); found && !prices.has(keyOf(name)); found = endings.exec(name)) {
    times = found.groups?.["times"] ?? times;
    const word = found.groups?.["when"]?.toLowerCase();
    if (word === "needed" || word === "done") when = word;
    name = name.slice(0, found.index);
  }

  const price = prices.get(keyOf(name));
  const problems = [];
  if (!price) {
    const near = nearest(
      name,
      [...prices.values()].map(({ item }) => item),
    );
    problems.push(problem("item-unknown", within(at, 0, name.length), { given: name, near }));
  }
  if (times !== undefined && !isTimes(times)) {
    const words = within(at, text.lastIndexOf(times), times.length);
    problems.push(problem("item-times-wrong", words, { given: times, least: 1, most: mostTimes }));
  }
  if (!price || problems.length > 0) return { value: null, problems };
  return { value: { price, times: Number(times ?? 1), when, included: 0, at }, problems };
}

const isTimes = (times: string) => /^\d{1,3}$/.test(times) && Number(times) >= 1;
