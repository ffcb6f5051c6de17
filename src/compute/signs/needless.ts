import type { Says } from "#tables/statements.js";
import { idsOf, spoken } from "#tables/statements.js";
import type { Stronger } from "#tables/stronger.js";
import type { Saying } from "./sayings.js";

/** The sayings without what a stronger one among them makes needless. */
export function withoutNeedless(sayings: readonly Saying[], rules: readonly Stronger[]): Saying[] {
  const said = new Set(sayings.flatMap(({ says }) => idsOf(says)));
  const needless = new Set(rules.filter((rule) => said.has(rule.said)).flatMap((rule) => rule.needless));
  return sayings.map((saying) => ({ ...saying, says: without(saying.says, needless) }));
}

function without(says: Says, needless: ReadonlySet<string>): Says {
  const kept = { ...says, signs: says.signs.filter(({ id }) => !needless.has(`signs.${id}`)) };
  for (const list of spoken)
    if (list !== "signs") kept[list] = says[list].filter((id) => !needless.has(`${list}.${id}`));
  return kept;
}
