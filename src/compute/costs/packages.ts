import { type Problem, problem } from "#problems/problem.js";
import type { Price } from "./price-list.js";
import { type Item, readItem } from "./read-item.js";

/**
 * Opens the packages of an estimate. What a package holds costs nothing more, and what goes beyond it is charged as usual:
 * so each thing it holds becomes an item, unless the estimate has that item already.
 * Problems: "package-not-firm", "package-in-package", and those of a content that cannot be read.
 */
export function openPackages(
  listed: readonly Item[],
  prices: ReadonlyMap<string, Price>,
): { items: Item[]; problems: Problem[] } {
  const problems: Problem[] = [];
  const items = listed.map((item) => ({ ...item }));
  for (const { price, when, times: bought, at } of listed) {
    if (price.includes.length > 0 && when !== null)
      problems.push(problem("package-not-firm", at, { item: price.item }));
    for (const { text, at: place } of price.includes) {
      const content = readItem(text, prices, place);
      problems.push(...content.problems);
      if (!content.value) continue;
      const { price: held, times } = content.value;
      if (held.includes.length > 0) problems.push(problem("package-in-package", place, { item: held.item }));
      const known = items.find((item) => item.price === held && item.when === content.value?.when);
      if (known) known.included += bought * times;
      else
        items.push({ ...content.value, times: held.per === "once" ? bought * times : 1, included: bought * times, at });
    }
  }
  return { items, problems };
}
